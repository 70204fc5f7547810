using System.ComponentModel;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Cli.Settings;

/// <summary>Describes an argument or option by a text of the resources; its usual value, where it has one, is taken from where it stands.</summary>
[AttributeUsage(AttributeTargets.All)]
public sealed class SaysAttribute(string code) : DescriptionAttribute
{
    public string Code { get; } = code;

    public override string Description => CliTexts.Catalog.Say(
        UsualValues.Of(Code) is { } usual ? new Message(Code, new Figure(usual, "0.######")) : new Message(Code));
}
