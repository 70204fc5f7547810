using Halfsplit.Architecture.Tests.House;
using Halfsplit.Architecture.Tests.Rules;
using Xunit;

namespace Halfsplit.Architecture.Tests;

public sealed class FileHabitTests
{
    private static readonly string[] CodeFolders = ["src", "tests", "benchmarks"];
    private static readonly string[] TextPatterns = ["*.cs", "*.csproj", "*.props", "*.targets", "*.yaml", "*.json", "*.resx", "*.razor", "*.js"];

    private static IEnumerable<SourceFile> Code => CodeFolders.SelectMany(folder => Repository.Files(folder, "*.cs"));

    [Fact]
    public void Files_are_short()
    {
        var files = Code.ToList();
        foreach (var file in FileHabits.Long(files))
            TestContext.Current.TestOutputHelper?.WriteLine($"{file.Path}: {file.Lines} lines");

        Assert.NotEmpty(files);
        Broken.None(FileHabits.TooLong(files));
    }

    [Fact]
    public void Half_of_the_shipped_files_are_very_short() =>
        Assert.InRange(FileHabits.Median(Repository.Files("src", "*.cs")), 1, FileHabits.LongestMedian);

    [Fact]
    public void Names_name_an_idea() =>
        Broken.None(FileHabits.EmptyNames([.. Code.Select(file => file.Path), .. Repository.AllProjects.Select(project => project.Path)]));

    [Fact]
    public void Nothing_reads_outside_the_repository() =>
        Broken.None(FileHabits.OutsideReaders(TextPatterns.SelectMany(pattern => Repository.Files(".", pattern))));

    [Fact]
    public void Too_long_a_file_is_found()
    {
        var longest = OfLines("src/Fits.cs", FileHabits.LongestFile);
        var tooLong = OfLines("src/Grown.cs", FileHabits.LongestFile + 1);

        Assert.StartsWith("src/Grown.cs", Assert.Single(FileHabits.TooLong([longest, tooLong])), StringComparison.Ordinal);
        Assert.Equal([tooLong, longest], FileHabits.Long([longest, tooLong, OfLines("src/Small.cs", 12)]));
    }

    [Theory]
    [InlineData(new[] { 10, 500, 20 }, 20)]
    [InlineData(new[] { 10, 130, 200, 20 }, 130)]
    public void The_median_is_the_middle_length(int[] lengths, int median) =>
        Assert.Equal(median, FileHabits.Median(lengths.Select(lines => OfLines("src/Any.cs", lines))));

    [Theory]
    [InlineData("src/Halfsplit.Circuits/StringUtils.cs", true)]
    [InlineData("src/Halfsplit.Common/Halfsplit.Common.csproj", true)]
    [InlineData("src/Halfsplit.Jobs/JobManager.cs", true)]
    [InlineData("src/Halfsplit.Cli/helpers/Table.cs", true)]
    [InlineData("src/Halfsplit.Diagnosis/CommonPractice.cs", false)]
    [InlineData("src/Halfsplit.Simulation/Commonality.cs", false)]
    [InlineData("src/Halfsplit.Circuits/Wire.cs", false)]
    public void An_empty_name_is_found(string path, bool found) =>
        Assert.Equal(found, FileHabits.EmptyNames([path]).Any());

    [Theory]
    [InlineData("var text = File.ReadAllText(\"{0}/standards.md\");", true)]
    [InlineData("// The shared supply moves every reading.", false)]
    [InlineData("<Compile Include=\"../sharedness.cs\" />", false)]
    public void A_reader_outside_the_repository_is_found(string text, bool found)
    {
        // Put together here, or this file would be found itself.
        var outside = string.Concat("..", "/", "shared");
        var file = new SourceFile("src/Any.cs", text.Replace("{0}", outside, StringComparison.Ordinal));

        Assert.Equal(found, FileHabits.OutsideReaders([file]).Any());
    }

    private static SourceFile OfLines(string path, int lines) =>
        new(path, string.Concat(Enumerable.Repeat("line\n", lines)));
}
