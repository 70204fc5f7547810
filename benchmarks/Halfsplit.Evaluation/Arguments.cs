using System.Globalization;
using Halfsplit.Evaluation.Cars;

namespace Halfsplit.Evaluation;

/// <summary>What was asked for on the command line: a task and its options.</summary>
public sealed class Arguments
{
    private static readonly Dictionary<string, string[]> OptionsOf = new(StringComparer.Ordinal)
    {
        ["closed-loop"] = ["--sheet", "--cars", "--variant", "--players", "--out", "--threads"],
        ["table"] = ["--sheet", "--cars", "--variant", "--players", "--out"],
        ["differences"] = ["--sheet", "--cars", "--variant", "--players", "--out", "--from"],
        ["plots"] = ["--sheet", "--cars", "--variant", "--players", "--out", "--to"],
        ["pack"] = ["--sheet", "--variant", "--out"],
        ["trace"] = ["--sheet", "--car", "--variant", "--players"],
    };

    private static readonly Dictionary<string, int> Least = new(StringComparer.Ordinal) { ["--cars"] = 1, ["--threads"] = 1, ["--car"] = 0 };

    private readonly Dictionary<string, string> _options = new(StringComparer.Ordinal);

    private Arguments(string task) => Task = task;

    public string Task { get; }

    /// <summary>Names of variants; without the option the usual cars, but a table is of all that the files hold.</summary>
    public string[] Variants => Text("--variant", Task == "table" ? "all" : "base") == "all"
        ? [.. Variant.All.Select(v => v.Name)]
        : List("--variant", ["base"]);

    /// <summary>Reads a command line; what is wrong with it is said in words, else null.</summary>
    public static (Arguments? Read, string? Wrong) Parse(IReadOnlyList<string> args)
    {
        ArgumentNullException.ThrowIfNull(args);
        if (args.Count == 0 || !OptionsOf.TryGetValue(args[0], out var allowed))
        {
            return (null, args.Count == 0 ? "Say what to do." : $"There is no task {args[0]}.");
        }

        var arguments = new Arguments(args[0]);
        for (var i = 1; i < args.Count; i += 2)
        {
            if (!allowed.Contains(args[i]))
            {
                return (null, $"{args[0]} has no option {args[i]}.");
            }

            if (i + 1 == args.Count)
            {
                return (null, $"{args[i]} needs a value after it.");
            }

            if (Least.TryGetValue(args[i], out var least)
                && (!int.TryParse(args[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number < least))
            {
                return (null, $"{args[i]} {args[i + 1]}: a whole number from {least} on is needed.");
            }

            arguments._options[args[i]] = args[i + 1];
        }

        return (arguments, null);
    }

    public string? Find(string option) => _options.GetValueOrDefault(option);

    public string Text(string option, string usual) => Find(option) ?? usual;

    public int Number(string option, int usual) =>
        Find(option) is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : usual;

    /// <summary>Values apart by commas.</summary>
    public string[] List(string option, IEnumerable<string> usual) => Find(option)?.Split(',') ?? [.. usual];
}
