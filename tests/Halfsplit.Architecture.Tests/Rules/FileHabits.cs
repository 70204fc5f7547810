using System.Text.RegularExpressions;
using Halfsplit.Architecture.Tests.House;

namespace Halfsplit.Architecture.Tests.Rules;

/// <summary>Small files, one idea each, under a name that says which.</summary>
internal static partial class FileHabits
{
    /// <summary>Above this a file is worth a look.</summary>
    public const int LongFile = 400;

    /// <summary>Above this a file must be divided.</summary>
    public const int LongestFile = 600;

    /// <summary>Half of the files are at most this long.</summary>
    public const int LongestMedian = 120;

    private static readonly HashSet<string> EmptyWords = new(StringComparer.OrdinalIgnoreCase)
    {
        "Util", "Utils", "Utility", "Utilities", "Helper", "Helpers", "Common", "Manager", "Managers", "Misc",
    };

    /// <summary>The files above <see cref="LongestFile"/>.</summary>
    public static IEnumerable<string> TooLong(IEnumerable<SourceFile> files) =>
        files.Where(file => file.Lines > LongestFile).Select(file => $"{file.Path} has {file.Lines} lines: divide it.");

    /// <summary>The files above <see cref="LongFile"/>, the longest first.</summary>
    public static IReadOnlyList<SourceFile> Long(IEnumerable<SourceFile> files) =>
        [.. files.Where(file => file.Lines > LongFile).OrderByDescending(file => file.Lines)];

    /// <summary>The middle length, in lines; the longer of the two middle ones when their number is even; 0 for no files.</summary>
    public static int Median(IEnumerable<SourceFile> files)
    {
        int[] lengths = [.. files.Select(file => file.Lines).Order()];
        return lengths.Length == 0 ? 0 : lengths[lengths.Length / 2];
    }

    /// <summary>The paths in which a folder's, a project's or a file's name ends in a word that names no idea.</summary>
    public static IEnumerable<string> EmptyNames(IEnumerable<string> paths) =>
        paths.Where(path => path.Split('/', '.').Any(name => EmptyWords.Contains(LastWord().Match(name).Value)));

    /// <summary>The files that read from a folder that the repository does not hold.</summary>
    public static IEnumerable<string> OutsideReaders(IEnumerable<SourceFile> files) =>
        files.Where(file => OutsideFolder().IsMatch(file.Text)).Select(file => file.Path);

    [GeneratedRegex("(?:[A-Z]|^)[a-z]*$")]
    private static partial Regex LastWord();

    [GeneratedRegex(@"\.\.[/\\]+shared\b")]
    private static partial Regex OutsideFolder();
}
