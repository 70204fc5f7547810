using System.Diagnostics;
using System.Globalization;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Evaluation;
using Halfsplit.Evaluation.Cars;
using Halfsplit.Evaluation.Play;
using Halfsplit.Evaluation.Tables;

const string Usage = """
    closed-loop [--sheet NAME] [--cars N] [--variant NAME] [--players A,B] [--out FOLDER] [--threads N]
    table       [--sheet NAME] [--cars N] [--variant NAME] [--players A,B] [--out FOLDER]
    differences [--sheet NAME] [--cars N] [--variant NAME] [--players A,B] [--out FOLDER] [--from FOLDER]
    plots       [--sheet NAME] [--cars N] [--variant NAME] [--players A,B] [--out FOLDER] [--to FOLDER]
    pack        [--sheet NAME] [--variant NAME] [--out FOLDER]
    trace       --sheet NAME --car N [--variant NAME] [--players A,B]
    """;

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var known = AllPlayers.Make();
var (arguments, wrong) = Arguments.Parse(args);
if (arguments is null)
{
    return Refuse(wrong!);
}

var names = arguments.List("--players", known.Select(p => p.Name));
var sheets = arguments.List("--sheet", ShippedSheets.Names);
var folder = arguments.Text("--out", Path.Combine("artifacts", "evaluation"));
var variantNames = arguments.Variants;
if (names.Except(known.Select(p => p.Name)).Concat(sheets.Except(ShippedSheets.Names)).Concat(variantNames.Where(v => Variant.Find(v) is null)).ToList()
    is { Count: > 0 } unknown)
{
    return Refuse($"Not known: {string.Join(", ", unknown)}.");
}

var variants = variantNames.Select(v => Variant.Find(v)!).ToList();

int Refuse(string why)
{
    Console.Error.WriteLine(why);
    Console.Error.WriteLine(Usage);
    Console.Error.WriteLine($"sheets: {string.Join(", ", ShippedSheets.Names)}");
    Console.Error.WriteLine($"variants: {string.Join(", ", Variant.All.Select(v => v.Name))}, all");
    Console.Error.WriteLine($"players: {string.Join(", ", known.Select(p => p.Name))}");
    return 2;
}

var cars = arguments.Number("--cars", int.MaxValue);
List<CarResult> Results(string from) => [.. variants
    .SelectMany(v => sheets.SelectMany(s => ResultFile.Read(ClosedLoop.PathOf(from, s, v.Name))))
    .Where(r => names.Contains(r.Player) && r.Car < cars)];

int NoResults(string from)
{
    Console.Error.WriteLine($"No such results in {from}: play them first, with closed-loop --out {from}.");
    return 1;
}

switch (arguments.Task)
{
    case "closed-loop":
        foreach (var variant in variants)
        {
            new ClosedLoop(
                new ClosedLoopRun(
                    [.. sheets], arguments.Number("--cars", 2000), variant, [.. known.Where(p => names.Contains(p.Name))], folder, arguments.Number("--threads", 2)),
                Console.Error).Play();
        }

        return 0;
    case "table":
        if (Results(folder) is not { Count: > 0 } told)
        {
            return NoResults(folder);
        }

        new MarkdownTables(Console.Out).Print(told);
        return 0;
    case "differences":
        var from = arguments.Text("--from", folder);
        if (Results(folder).Where(r => r.Player == names[0]).ToList() is not { Count: > 0 } own)
        {
            return NoResults(folder);
        }

        if (Results(from).Where(r => from != folder || r.Player != names[0]).ToList() is not { Count: > 0 } others)
        {
            return NoResults(from);
        }

        new MarkdownTables(Console.Out).PrintDifferences(own, others);
        return 0;
    case "pack":
        foreach (var variant in variants)
        {
            sheets.ToList().ForEach(sheet => ResultFile.Pack(ClosedLoop.PathOf(folder, sheet, variant.Name)));
        }

        return 0;
    case "plots":
        if (Results(folder) is not { Count: > 0 } drawn)
        {
            return NoResults(folder);
        }

        Plots.Write(drawn, arguments.Text("--to", Path.Combine("docs", "pictures")));
        return 0;
    case "trace":
        var lot = new CarLot(sheets[0], ShippedSheets.Load(sheets[0]), variants[0]);
        var number = arguments.Number("--car", 0);
        if (lot.Draw(number) is null)
        {
            Console.Error.WriteLine($"{sheets[0]} has no car {number}: nothing that was drawn shows its complaint. Try another.");
            return 1;
        }

        var place = new Workplace(ShippedSheets.Load(sheets[0]), lot.ComplaintOf(number), variants[0]);
        foreach (var player in known.Where(p => names.Contains(p.Name)))
        {
            Console.WriteLine($"{sheets[0]} {variants[0].Name} car {number}, {place.Complaint.Name}, {player.Name}");
            // Each mends a car of its own.
            CarTrace.Print(place, sheets[0], number, lot.Draw(number)!, player, Console.Out);
        }

        return 0;
    default:
        throw new UnreachableException(arguments.Task);
}
