using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Halfsplit.Cli.Tests.Texts;

/// <summary>The texts and the string literals of all projects, as they lie on disk.</summary>
internal static partial class TextSources
{
    private static readonly string Source = Path.Combine(FindRoot(), "src");

    /// <summary>A file of the repository.</summary>
    public static string File(params string[] path) => Path.Combine([FindRoot(), .. path]);

    /// <summary>Every text of every resource of messages; words that people type have their own file and are left out.</summary>
    public static IReadOnlyDictionary<string, string> Texts { get; } = Files("*.resx")
        .Where(f => Path.GetFileName(f) == "Texts.resx")
        .SelectMany(f => XDocument.Load(f).Root!.Elements("data"))
        .Select(d => ((string)d.Attribute("name")!, (string)d.Element("value")!))
        .GroupBy(t => t.Item1)
        .ToDictionary(g => g.Key, g => g.Count() == 1 ? g.Single().Item2 : throw new InvalidDataException($"{g.Key} is there twice."));

    /// <summary>Every string literal in the code, without its quotes; of an interpolated one the pieces before the first gap end in "{".</summary>
    public static IReadOnlySet<string> Literals { get; } = Files("*.cs")
        .SelectMany(f => Literal().Matches(System.IO.File.ReadAllText(f)))
        .Select(m => m.Groups[2].Value)
        .SelectMany(text => text.Contains('{', StringComparison.Ordinal) ? [text, text[..(text.IndexOf('{', StringComparison.Ordinal) + 1)]] : (string[])[text])
        // In a screen's markup a literal stands within the quotes of an attribute.
        .Concat(Files("*.razor").SelectMany(f => AppCode().Matches(System.IO.File.ReadAllText(f)).Select(m => m.Value)))
        .ToHashSet(StringComparer.Ordinal);

    /// <summary>Literals that index a table, as in <c>defaults["lamp.volts"]</c>.</summary>
    public static IReadOnlySet<string> Indexes { get; } = Files("*.cs")
        .SelectMany(f => Index().Matches(System.IO.File.ReadAllText(f)))
        .Select(m => m.Groups[1].Value)
        .ToHashSet(StringComparer.Ordinal);

    private static IEnumerable<string> Files(string pattern) => Directory
        .EnumerateFiles(Source, pattern, SearchOption.AllDirectories)
        .Where(f => !f.Split(Path.DirectorySeparatorChar).Any(p => p is "bin" or "obj"));

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (System.IO.File.Exists(Path.Combine(folder.FullName, "Halfsplit.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("The repository is not above the tests.");
    }

    [GeneratedRegex("\\w\\[\"([a-z.-]+)\"\\]")]
    private static partial Regex Index();

    [GeneratedRegex("(?<=\")(?:app|shelf|bench-[a-z]+)\\.[A-Za-z.-]*\\{?")]
    private static partial Regex AppCode();

    [GeneratedRegex("(\\$?)\"((?:[^\"\\\\\\r\\n]|\\\\.)*)\"")]
    private static partial Regex Literal();
}
