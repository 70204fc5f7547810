using System.Runtime.CompilerServices;
using Xunit;

namespace Halfsplit.Cli.Tests.Circuits;

/// <summary>Texts that a person has read and approved; a change shows as the lines that differ.</summary>
internal static class ApprovedText
{
    /// <summary>Set to 1 to take the present outputs as the approved ones; read them before they are committed.</summary>
    public const string Variable = "HALFSPLIT_APPROVE";

    public static void Check(string name, string text, [CallerFilePath] string caller = "")
    {
        var file = Path.Combine(Path.GetDirectoryName(caller)!, "Approved", name + ".txt");
        if (Environment.GetEnvironmentVariable(Variable) == "1")
        {
            File.WriteAllText(file, text);
            return;
        }

        Assert.True(File.Exists(file), $"There is no approved text {name}. Run once with {Variable}=1 and read what it wrote.");
        var approved = File.ReadAllText(file).Split('\n');
        var present = text.Split('\n');
        var changes = new List<string>();
        for (var i = 0; i < Math.Max(approved.Length, present.Length); i++)
        {
            var (was, now) = (approved.ElementAtOrDefault(i), present.ElementAtOrDefault(i));
            if (was != now)
            {
                changes.Add($"line {i + 1}\n  - {was}\n  + {now}");
            }
        }

        Assert.True(changes.Count == 0, $"{name} differs from its approved text:\n{string.Join("\n", changes)}");
    }
}
