using System.Globalization;
using Halfsplit.Evaluation.Cars;
using Halfsplit.Evaluation.Play;
using Halfsplit.Evaluation.Tables;
using Xunit;

namespace Halfsplit.Evaluation.Tests;

public sealed class RunTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("halfsplit-evaluation-").FullName;

    private static string[] Play(string folder, int cars, int threads, params string[] players) =>
        File.ReadAllLines(PlayVariant("base", folder, cars, threads, players));

    private static string PlayVariant(string variant, string folder, int cars, int threads, params string[] players)
    {
        var made = AllPlayers.Make().Where(p => players.Contains(p.Name));
        new ClosedLoop(
            new ClosedLoopRun(["headlamps"], cars, Variant.Find(variant)!, [.. made], folder, threads), TextWriter.Null).Play();
        return ClosedLoop.PathOf(folder, "headlamps", variant);
    }

    [Fact]
    public void One_thread_or_two_play_the_same()
    {
        var one = Play(Path.Combine(_folder, "one"), 6, 1, "skilled-order", "halfsplit");
        var two = Play(Path.Combine(_folder, "two"), 6, 2, "skilled-order", "halfsplit");

        Assert.Equal(12, one.Length);
        Assert.Equal(one.Order(StringComparer.Ordinal), two.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void An_interrupted_run_goes_on_where_it_was()
    {
        var whole = Play(_folder, 5, 1, "fixed-order", "clairvoyant");
        var path = ClosedLoop.PathOf(_folder, "headlamps", "base");
        // The last line is cut short, the one before is there.
        File.WriteAllText(path, string.Join('\n', whole[..4]) + "\n" + whole[4][..(whole[4].Length / 2)]);

        Play(_folder, 5, 1, "fixed-order", "clairvoyant");
        var results = ResultFile.Read(path).ToList();

        Assert.Equal(10, results.Count);
        Assert.Equal(10, results.Select(r => r.Key).Distinct().Count());
        Assert.Equal(
            whole.Order(StringComparer.Ordinal),
            File.ReadAllLines(path).Where(l => l.EndsWith('}') && whole.Contains(l)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_packed_run_holds_the_same_and_goes_on()
    {
        Play(_folder, 3, 1, "fixed-order");
        var path = ClosedLoop.PathOf(_folder, "headlamps", "base");
        var before = ResultFile.Read(path).Select(r => r.ToString()).Order(StringComparer.Ordinal).ToList();

        ResultFile.Pack(path);
        Assert.False(File.Exists(path));
        Assert.Equal(before, ResultFile.Read(path).Select(r => r.ToString()).Order(StringComparer.Ordinal));

        // Two more cars: only these are played, and packing again keeps all.
        Assert.Equal(2, Play(_folder, 5, 1, "fixed-order").Length);
        ResultFile.Pack(path);
        Assert.Equal(5, ResultFile.Read(path).Count());
    }

    [Fact]
    public void The_tables_name_every_player_in_any_culture()
    {
        Play(_folder, 4, 2, "skilled-order", "clairvoyant", "likeliest-part", "fixed-order");
        var results = ResultFile.Read(ClosedLoop.PathOf(_folder, "headlamps", "base")).ToList();
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        new MarkdownTables(text).Print(results);

        Assert.Contains("| skilled-order | 4 |", text.ToString(), StringComparison.Ordinal);
        Assert.Contains("| clairvoyant | 4 |", text.ToString(), StringComparison.Ordinal);
        Assert.Contains("1.00 ± 0.00", text.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Packed_variants_are_told_in_an_overview_and_by_player()
    {
        string[] paths = [.. new[] { "flat-weights", "base" }.Select(v => PlayVariant(v, _folder, 3, 1, "fixed-order", "clairvoyant"))];
        foreach (var path in paths)
        {
            ResultFile.Pack(path);
        }

        using var text = new StringWriter(CultureInfo.InvariantCulture);
        new MarkdownTables(text).Print([.. paths.SelectMany(ResultFile.Read)]);

        Assert.All(paths, p => Assert.False(File.Exists(p)));
        Assert.Equal(
            ["### by variant", "### base: headlamps", "### flat-weights: headlamps"],
            text.ToString().Split('\n').Where(l => l.StartsWith('#')));
        Assert.Equal(2, text.ToString().Split("| clairvoyant | 3 |").Length - 1);
        Assert.DoesNotContain("**all**", text.ToString(), StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
