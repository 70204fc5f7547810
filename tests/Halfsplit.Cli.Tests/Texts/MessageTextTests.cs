using System.Globalization;
using System.Text.RegularExpressions;
using Halfsplit.Circuits.Shelf;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Cli.Tests.Texts;

/// <summary>Every code that the code names has a text, and every text a code that names it.</summary>
public sealed partial class MessageTextTests
{
    private static readonly HashSet<string> Families =
        [.. TextSources.Texts.Keys.Where(k => k.Contains('.', StringComparison.Ordinal)).Select(FamilyOf)];

    [Fact]
    public void Every_code_has_a_text()
    {
        var codes = TextSources.Literals.Where(l => Code().IsMatch(l) && Families.Contains(FamilyOf(l))).ToList();

        Assert.True(codes.Count > 300, $"only {codes.Count} codes found");
        Assert.Empty(codes.Where(c => !TextSources.Texts.ContainsKey(c) && !IsNoCode(c)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_text_has_a_code() => Assert.Empty(
        TextSources.Texts.Keys.Where(k => !IsNamed(k)).Order(StringComparer.Ordinal));

    [Fact]
    public void What_data_and_lists_name_has_a_text()
    {
        var actions = File.ReadLines(TextSources.File("data", "repairs.csv")).Skip(1).Select(l => l.Split(',')[1]).ToList();
        Assert.NotEmpty(actions);
        Assert.All(actions, a => Assert.Contains($"repair.{a}", TextSources.Texts));
        var outside = File.ReadLines(TextSources.File("data", "outside.csv")).Skip(1).Select(l => l.Split(',')[0]).ToList();
        Assert.NotEmpty(outside);
        Assert.All(outside, o => Assert.Contains($"outside.{o}", TextSources.Texts));
        Assert.All(InstrumentNames.All, i => Assert.Contains($"instrument.{i}", TextSources.Texts));
        Assert.All(
            (string[])["work", "click", "fuse", "fit", "heat", "wiggle", "command", "bench", "swap", "work-hot", "work-again", "none"],
            s => Assert.Contains($"action.{s}", TextSources.Texts));
        Assert.All(
            (string[])["fuel-vapour", "moving-parts", "hot-parts", "airbag", "high-voltage", "battery-gas", "other"],
            c => Assert.Contains($"caution.{c}", TextSources.Texts));
        Assert.All(NoticedTable.All, n => Assert.Contains($"noticed.{n.Name}", TextSources.Texts));
        Assert.All(
            NoticedTable.All.Where(n => n.About != NoticedAbout.Nothing), n => Assert.Contains($"noticed-of.{n.Name}", TextSources.Texts));
        Assert.All(CircuitShelf.Systems, s => Assert.Contains($"shelf.system-{s}", TextSources.Texts));
    }

    [Fact]
    public void Every_text_can_be_filled() => Assert.All(TextSources.Texts, text =>
    {
        var gaps = Gap().Matches(text.Value).Select(m => int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)).ToHashSet();
        // Gaps are numbered from 0 without a hole, or an argument would be said to nobody.
        Assert.Equal(Enumerable.Range(0, gaps.Count == 0 ? 0 : gaps.Max() + 1).Except(Unsaid(text.Key)), gaps.Order());
        if (gaps.Count > 0)
        {
            Assert.NotEmpty(string.Format(CultureInfo.InvariantCulture, text.Value, [.. Enumerable.Repeat((object)1.5, 9)]));
        }
    });

    /// <summary>Arguments that a text leaves out on purpose.</summary>
    private static int[] Unsaid(string key) => key switch
    {
        "terminal.metal" => [0],
        "predict.fuse-blown" => [1],
        _ => [],
    };

    /// <summary>Literals that look like codes and are none.</summary>
    private static bool IsNoCode(string literal) => literal.EndsWith(".csv", StringComparison.Ordinal)
        || TextSources.Indexes.Contains(literal)
        // Completed by a suffix: "lint.load" + "-no-feed".
        || TextSources.Texts.Keys.Any(k => k.StartsWith(literal + "-", StringComparison.Ordinal));

    /// <summary>Named as it is, made of a literal and a gap ("repair.{action}"), or of two literals.</summary>
    private static bool IsNamed(string key)
    {
        if (TextSources.Literals.Contains(key))
        {
            return true;
        }

        for (var cut = 1; cut < key.Length; cut++)
        {
            if ((key[cut - 1] is '.' or '-' && TextSources.Literals.Contains(key[..cut] + "{"))
                || (key[cut - 1] == '.' && TextSources.Literals.Contains(key[..cut])))
            {
                return true;
            }

            if (key[cut] == '-' && TextSources.Literals.Contains(key[..cut]) && TextSources.Literals.Contains(key[cut..]))
            {
                return true;
            }
        }

        return false;
    }

    private static string FamilyOf(string code) => code[..code.IndexOf('.', StringComparison.Ordinal)];

    [GeneratedRegex(@"^[a-z]+(-[a-z]+)*\.[a-z0-9]+(-[a-z0-9]+)*$")]
    private static partial Regex Code();

    [GeneratedRegex(@"(?<!\{)\{(\d)(?::[^}]*)?\}")]
    private static partial Regex Gap();
}
