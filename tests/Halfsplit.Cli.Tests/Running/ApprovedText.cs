using System.Runtime.CompilerServices;
using System.Text;
using Xunit;

namespace Halfsplit.Cli.Tests.Running;

/// <summary>
/// Compares an output with the file of <c>Approved/</c> that a person has read and found good. With the environment
/// variable HALFSPLIT_APPROVE=1 the files are written anew: look at the difference before it is committed.
/// </summary>
internal static class ApprovedText
{
    private const string Variable = "HALFSPLIT_APPROVE";

    public static void Matches(string name, string actual, [CallerFilePath] string caller = "")
    {
        var path = Path.Combine(Folder(caller), name + ".txt");
        actual = TrimmedLines(actual);
        if (Environment.GetEnvironmentVariable(Variable) == "1")
        {
            File.WriteAllText(path, actual);
            return;
        }

        Assert.True(File.Exists(path), $"Approved/{name}.txt is missing; write it with {Variable}=1 and read it.");
        var approved = File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal);
        if (approved != actual)
        {
            Assert.Fail($"The output differs from Approved/{name}.txt ({Variable}=1 writes it anew).\n{Difference(approved, actual)}");
        }
    }

    /// <summary>Blanks at the ends of lines are nothing that people see.</summary>
    private static string TrimmedLines(string text) =>
        string.Join('\n', text.Split('\n').Select(line => line.TrimEnd())).TrimEnd('\n') + "\n";

    private static string Difference(string approved, string actual)
    {
        var (left, right) = (approved.Split('\n'), actual.Split('\n'));
        var text = new StringBuilder();
        for (var i = 0; i < Math.Max(left.Length, right.Length); i++)
        {
            var (old, present) = (left.ElementAtOrDefault(i), right.ElementAtOrDefault(i));
            if (old == present)
            {
                continue;
            }

            text.Append("line ").Append(i + 1).Append('\n')
                .Append("  approved: ").Append(old ?? "(no line)").Append('\n')
                .Append("  now:      ").Append(present ?? "(no line)").Append('\n');
        }

        return text.ToString();
    }

    private static string Folder(string caller)
    {
        for (var folder = Path.GetDirectoryName(caller); folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (Directory.Exists(Path.Combine(folder, "Approved")))
            {
                return Path.Combine(folder, "Approved");
            }
        }

        throw new DirectoryNotFoundException($"No folder Approved above {caller}.");
    }
}
