using System.ComponentModel;

namespace Halfsplit.Cli.Settings;

/// <summary>A description whose words stand in the resources.</summary>
[AttributeUsage(AttributeTargets.All)]
public sealed class SaysAttribute(string code) : DescriptionAttribute
{
    public string Code { get; } = code;

    public override string Description => CliTexts.Catalog.Say(Code);
}
