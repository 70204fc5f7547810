using System.Globalization;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Evaluation.Cars;
using Halfsplit.Evaluation.Play;
using Halfsplit.Evaluation.Tables;

const string Usage = """
    closed-loop [--sheet NAME] [--cars N] [--variant NAME] [--players A,B] [--out FOLDER] [--threads N]
    table       [--sheet NAME] [--cars N] [--variant NAME] [--players A,B] [--out FOLDER]
    plots       [--sheet NAME] [--cars N] [--variant NAME] [--players A,B] [--out FOLDER] [--to FOLDER]
    pack        [--sheet NAME] [--variant NAME] [--out FOLDER]
    trace       --sheet NAME --car N [--variant NAME] [--players A,B]
    """;

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var options = new Dictionary<string, string>(StringComparer.Ordinal);
for (var i = 1; i + 1 < args.Length; i += 2)
{
    options[args[i]] = args[i + 1];
}

string Option(string name, string usual) => options.GetValueOrDefault(name, usual);
int Number(string name, int usual) => int.Parse(Option(name, usual.ToString(CultureInfo.InvariantCulture)), CultureInfo.InvariantCulture);

var known = AllPlayers.Make();
var names = Option("--players", string.Join(',', known.Select(p => p.Name))).Split(',');
var sheets = options.TryGetValue("--sheet", out var one) ? one.Split(',') : [.. ShippedSheets.Names];
var folder = Option("--out", Path.Combine("artifacts", "evaluation"));
var variants = Option("--variant", "base") == "all" ? [.. Variant.All] : Option("--variant", "base").Split(',').Select(Variant.Find).ToList();
if (args.Length == 0 || args.Length % 2 == 0 || variants.Contains(null) || names.Except(known.Select(p => p.Name)).Any()
    || sheets.Except(ShippedSheets.Names).Any())
{
    Console.Error.WriteLine(Usage);
    Console.Error.WriteLine($"sheets: {string.Join(", ", ShippedSheets.Names)}");
    Console.Error.WriteLine($"variants: {string.Join(", ", Variant.All.Select(v => v.Name))}, all");
    Console.Error.WriteLine($"players: {string.Join(", ", known.Select(p => p.Name))}");
    return 2;
}

IEnumerable<CarResult> Results() => variants
    .SelectMany(v => sheets.SelectMany(s => ResultFile.Read(ClosedLoop.PathOf(folder, s, v!.Name))))
    .Where(r => names.Contains(r.Player) && r.Car < Number("--cars", int.MaxValue));

switch (args[0])
{
    case "closed-loop":
        foreach (var variant in variants)
        {
            new ClosedLoop(
                new ClosedLoopRun(
                    [.. sheets], Number("--cars", 2000), variant!, [.. known.Where(p => names.Contains(p.Name))], folder, Number("--threads", 2)),
                Console.Error).Play();
        }

        return 0;
    case "table":
        new MarkdownTables(Console.Out).Print([.. Results()]);
        return 0;
    case "pack":
        foreach (var variant in variants)
        {
            sheets.ToList().ForEach(sheet => ResultFile.Pack(ClosedLoop.PathOf(folder, sheet, variant!.Name)));
        }

        return 0;
    case "plots":
        Plots.Write([.. Results()], Option("--to", Path.Combine("docs", "pictures")));
        return 0;
    case "trace":
        var lot = new CarLot(sheets[0], ShippedSheets.Load(sheets[0]), variants[0]!);
        var number = Number("--car", 0);
        var place = new Workplace(ShippedSheets.Load(sheets[0]), lot.ComplaintOf(number), variants[0]!);
        foreach (var player in known.Where(p => names.Contains(p.Name)))
        {
            Console.WriteLine($"{sheets[0]} {variants[0]!.Name} car {number}, {place.Complaint.Name}, {player.Name}");
            CarTrace.Print(place, sheets[0], number, lot.Draw(number)!, player, Console.Out);
        }

        return 0;
    default:
        Console.Error.WriteLine(Usage);
        return 2;
}
