using System.Globalization;
using Halfsplit.Evaluation.Cars;
using Halfsplit.Evaluation.Play;

namespace Halfsplit.Evaluation.Tables;

/// <summary>Prints results as tables for a page.</summary>
public sealed class MarkdownTables(TextWriter writer)
{
    private const string EnginePlayed = "halfsplit";

    private static readonly string[] Order = [.. AllPlayers.Make().Select(p => p.Name)];

    private static readonly string[] OrderOfVariants = [.. Variant.All.Select(v => v.Name)];

    /// <summary>
    /// Of one variant every table: each sheet, all together, by class, calibration. Of several a row for each, then the
    /// players of each: the rest would be hundreds of tables.
    /// </summary>
    public void Print(IReadOnlyCollection<CarResult> results)
    {
        ArgumentNullException.ThrowIfNull(results);
        var variants = results.GroupBy(r => r.Variant).OrderBy(g => Array.IndexOf(OrderOfVariants, g.Key)).ToList();
        if (variants is [var only])
        {
            PrintVariant(only.Key, [.. only]);
            return;
        }

        // No row for all of them: a mean of different worlds says nothing.
        PrintOverview("by variant", variants);
        foreach (var variant in variants)
        {
            PrintPlayers($"{variant.Key}: {SheetsOf(variant)}", [.. variant]);
        }
    }

    /// <summary>What one player took more or less than each of the others, car by car.</summary>
    public void PrintDifferences(IReadOnlyCollection<CarResult> results, IReadOnlyCollection<CarResult> others)
    {
        var own = Summaries(results)[0];
        Head($"{own.Player}, car by car", "beside", "cars of both", "minutes more", "money more", "group held it %", "the other's");
        foreach (var other in Summaries(others))
        {
            var (mine, theirs) = (own.On(other), other.On(own));
            Row(other.Player, Whole(mine.Cars), mine.MinutesMore(theirs).Text("0.00"), mine.MoneyMore(theirs).Text("0.00"), Held(mine), Held(theirs));
        }
    }

    private static string Held(PlayerSummary s) => s.Group.Count > 0 ? s.FirstOrGroup.Text("0.0") : "–";

    private static List<PlayerSummary> Summaries(IReadOnlyCollection<CarResult> results) =>
        [.. results.GroupBy(r => r.Player).OrderBy(g => Array.IndexOf(Order, g.Key)).Select(g => new PlayerSummary(g.Key, g))];

    private static string SheetsOf(IEnumerable<CarResult> results) =>
        results.Select(r => r.Sheet).Distinct().ToList() is [var only] ? only : "all sheets";

    private void PrintVariant(string variant, IReadOnlyCollection<CarResult> results)
    {
        var sheets = results.GroupBy(r => r.Sheet).OrderBy(g => g.Key, StringComparer.Ordinal).ToList();
        if (sheets.Count > 1)
        {
            PrintOverview($"{variant}: by sheet", sheets);
            OverviewRow("**all**", results);
            sheets.ForEach(sheet => PrintPlayers($"{variant}: {sheet.Key}", [.. sheet]));
        }

        PrintPlayers($"{variant}: {SheetsOf(results)}", results);
        PrintClasses($"{variant}: by class of fault", results);
        PrintCalibration($"{variant}: calibration", results);
    }

    /// <summary>One row for each group of cars: the engine beside the orders of checks that people follow.</summary>
    private void PrintOverview(string title, IEnumerable<IGrouping<string, CarResult>> groups)
    {
        Head(title,
            "of", "cars", "minutes: halfsplit", "skilled-order", "fixed-order", "clairvoyant", "minutes ÷ skilled order", "÷ fixed order",
            "90 % of minutes: halfsplit", "money: halfsplit", "90 % of money: halfsplit",
            "first repair right %", "group held it %", "99 % group held it %", "size of 99 % group", "wrong parts: halfsplit", "skilled-order", "fixed-order",
            "handed over %: halfsplit", "skilled-order", "calibration error %", "Brier score");
        foreach (var group in groups)
        {
            OverviewRow(group.Key, [.. group]);
        }
    }

    private void OverviewRow(string name, IReadOnlyCollection<CarResult> results)
    {
        var by = Summaries(results).ToDictionary(s => s.Player, StringComparer.Ordinal);
        string Of(string player, Func<PlayerSummary, string> cell) => by.TryGetValue(player, out var s) ? cell(s) : "–";
        string Over(string player) => Of(EnginePlayed, e => Of(player, s => e.MinutesOver(s).Text("0.00")));
        string Minutes(PlayerSummary s) => s.Minutes.Text("0.0");
        string Money(PlayerSummary s) => s.Money.Text("0.0");
        string WrongParts(PlayerSummary s) => Cell(s.WrongParts.Mean, "0.00");
        string HandedOver(PlayerSummary s) => Short(s.HandedOver.Mean);
        Row(
            name, Of(EnginePlayed, s => Whole(s.Cars)),
            Of(EnginePlayed, Minutes), Of("skilled-order", Minutes), Of("fixed-order", Minutes), Of("clairvoyant", Minutes),
            Over("skilled-order"), Over("fixed-order"),
            Of(EnginePlayed, s => Short(s.Minutes90)), Of(EnginePlayed, Money), Of(EnginePlayed, s => Short(s.Money90)),
            Of(EnginePlayed, s => Short(s.FirstRight.Mean)), Of(EnginePlayed, s => Short(s.FirstOrGroup.Mean)),
            Of(EnginePlayed, s => Short(s.FirstOrWideGroup.Mean)), Of(EnginePlayed, s => s.WideGroup.Text("0.00")),
            Of(EnginePlayed, WrongParts), Of("skilled-order", WrongParts), Of("fixed-order", WrongParts),
            Of(EnginePlayed, HandedOver), Of("skilled-order", HandedOver),
            Of(EnginePlayed, s => ErrorOf(s.Claims)), Of(EnginePlayed, s => BrierOf(s.Claims)));
    }

    private void PrintPlayers(string title, IReadOnlyCollection<CarResult> results)
    {
        var summaries = Summaries(results);
        var fixedOrder = summaries.Find(s => s.Player == "fixed-order");
        var clairvoyant = summaries.Find(s => s.Player == "clairvoyant");
        Head(title,
            "player", "cars", "minutes", "90 %", "money", "90 %", "first repair right %", "group held it %", "size of group",
            "99 % group held it %", "size of 99 % group", "wrong parts", "wrong repairs", "comebacks %", "handed over %", "minutes ÷ fixed order", "minutes ÷ clairvoyant", "money ÷ clairvoyant",
            "calibration error of repairs %", "Brier score of repairs", "calibration error of suspects %", "Brier score of suspects");
        foreach (var s in summaries)
        {
            Row(
                s.Player, Whole(s.Cars), s.Minutes.Text("0.0"), Short(s.Minutes90), s.Money.Text("0.0"), Short(s.Money90),
                s.FirstRight.Text("0.0"), Held(s), s.Group.Text("0.00"),
                s.WideGroup.Count > 0 ? s.FirstOrWideGroup.Text("0.0") : "–", s.WideGroup.Text("0.00"),
                s.WrongParts.Text("0.00"), s.WrongRepairs.Text("0.00"), s.Comebacks.Text("0.0"), s.HandedOver.Text("0.0"),
                fixedOrder is null ? "–" : s.MinutesOver(fixedOrder).Text("0.00"),
                clairvoyant is null ? "–" : s.MinutesOver(clairvoyant).Text("0.00"),
                clairvoyant is null ? "–" : s.MoneyOver(clairvoyant).Text("0.00"),
                ErrorOf(s.Claims), BrierOf(s.Claims), ErrorOf(s.Suspects), BrierOf(s.Suspects));
        }
    }

    private static string ErrorOf(Calibration c) => c.Count == 0 ? "–" : Cell(100 * c.ExpectedError, "0.00");

    private static string BrierOf(Calibration c) => c.Count == 0 ? "–" : Cell(c.Brier, "0.0000");

    private void PrintClasses(string title, IReadOnlyCollection<CarResult> results)
    {
        var players = results.Select(r => r.Player).Distinct().OrderBy(p => Array.IndexOf(Order, p)).ToList();
        Head(title, ["class", "cars", .. players.Select(p => $"{p}: minutes, first right %")]);
        foreach (var group in results.GroupBy(r => r.Class).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal))
        {
            var cells = players.Select(p => new PlayerSummary(p, group.Where(r => r.Player == p)))
                .Select(s => s.Cars == 0 ? "–" : string.Create(CultureInfo.InvariantCulture, $"{s.Minutes.Mean:0.0}, {s.FirstRight.Mean:0}"));
            Row([group.Key, Whole(group.Select(r => (r.Sheet, r.Car)).Distinct().Count()), .. cells]);
        }
    }

    private void PrintCalibration(string title, IReadOnlyCollection<CarResult> results)
    {
        foreach (var s in Summaries(results).Where(s => s.Claims.Count > 0))
        {
            foreach (var (what, c) in new[] { ("odds of the repair", s.Claims), ("odds of suspects", s.Suspects) })
            {
                Head($"{title}, {s.Player}, {what}: expected calibration error {ErrorOf(c)} %, Brier score {BrierOf(c)}",
                    "odds from", "count", "mean odds", "came true");
                foreach (var (from, count, stated, hit) in c.Bins)
                {
                    Row(Cell(from, "0.00"), Whole(count), Cell(stated, "0.000"), Cell(hit, "0.000"));
                }
            }
        }
    }

    private void Head(string title, params string[] cells)
    {
        writer.WriteLine();
        writer.WriteLine($"### {title}");
        writer.WriteLine();
        Row(cells);
        Row([.. cells.Select((_, i) => i == 0 ? "---" : "---:")]);
    }

    private void Row(params string[] cells) => writer.WriteLine($"| {string.Join(" | ", cells)} |");

    private static string Whole(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Short(double value) => Cell(value, "0.0");

    private static string Cell(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
