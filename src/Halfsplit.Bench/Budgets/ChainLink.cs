using System.Globalization;
using System.Text.RegularExpressions;
using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Fuses;
using Halfsplit.Bench.Wires;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Budgets;

/// <summary>One piece of a path that the load's current takes.</summary>
/// <param name="Name">As it was written: <c>wire 2.5mm2 4.2m</c>, <c>fuse 15A</c>, <c>connector</c>.</param>
/// <param name="Ohms">Of a healthy piece, between its lowest and highest.</param>
/// <param name="MeasuredVolts">What a meter showed across it under the load; null where nothing was measured.</param>
public sealed partial record ChainLink(string Name, ValueRange Ohms, double? MeasuredVolts = null)
{
    /// <summary>The pieces beside wires and fuses, by the word in the chain, with their row in the table of healthy parts.</summary>
    private static readonly Dictionary<string, string> Rows = new(StringComparer.OrdinalIgnoreCase)
    {
        ["connector"] = "connector.contact-ohms", ["socket"] = "socket.contact-ohms", ["relay"] = "relay.contact-ohms",
        ["switch"] = "switch.contact-ohms", ["ground"] = "ground.point-ohms", ["splice"] = "joint.ohms",
    };

    /// <summary>The words that a chain is written with.</summary>
    public static string Words => string.Join(", ", ["wire 2.5mm2 4.2m", "fuse 15A", "fuse 15A mini", .. Rows.Keys]);

    /// <summary>Reads one piece, with what was measured across it after an equals sign: <c>connector = 0.12</c>, <c>relay = 48 mV</c>.</summary>
    public static Outcome<ChainLink> Parse(string text, double celsius)
    {
        ArgumentNullException.ThrowIfNull(text);
        var match = Written().Match(text.Trim());
        if (!match.Success)
        {
            return Wrong(text);
        }

        double? measured = match.Groups["volts"].Success
            ? Number(match.Groups["volts"]) * (match.Groups["milli"].Value.StartsWith("mV", StringComparison.Ordinal) ? 1e-3 : 1)
            : null;
        var name = match.Groups["name"].Value.Trim();
        if (Rows.TryGetValue(name, out var row))
        {
            return Outcome.Of(new ChainLink(name, ComponentDefaults.TwelveVolts[row].Range, measured));
        }

        return Wire().Match(name) is { Success: true } wire ? OfWire(name, wire, celsius, measured)
            : Fuse().Match(name) is { Success: true } fuse ? OfFuse(name, fuse, measured)
            : Wrong(text);
    }

    private static Outcome<ChainLink> OfWire(string name, Match wire, double celsius, double? measured)
    {
        var gauge = Gauges.Parse(wire.Groups["gauge"].Value);
        if (!gauge.IsGood)
        {
            return Outcome.Wrong<ChainLink>(gauge.Problems);
        }

        var metres = Number(wire.Groups["metres"]);
        var limits = new InputLimits().Within("length", metres, 0.01, 100, Unit.Metre);
        var perMetre = gauge.Result!.OhmsPerMetre(celsius).Range!.Value;
        return limits.AreKept
            ? Outcome.Of(new ChainLink(name, new ValueRange(perMetre.Low * metres, perMetre.High * metres), measured))
            : Outcome.Wrong<ChainLink>(limits.Problems);
    }

    private static Outcome<ChainLink> OfFuse(string name, Match fuse, double? measured) => FuseSpec.Parse(fuse.Groups["fuse"].Value).Then(spec =>
    {
        var cold = spec.ColdOhms.Range!.Value;
        return new ChainLink(name, cold with { High = cold.High * BenchDefaults.Table["fuse.hot-factor"] }, measured);
    });

    private static double Number(Group group) => double.Parse(group.Value.Replace(',', '.'), CultureInfo.InvariantCulture);

    private static Outcome<ChainLink> Wrong(string text) => Outcome.Wrong<ChainLink>(new Message("bench-limit.link", text, Words));

    [GeneratedRegex(@"^(?<name>[^=]+?)\s*(=\s*(?<volts>\d+([.,]\d+)?)\s*(?<milli>mV|V)?)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Written();

    [GeneratedRegex(@"^wire\s+(?<gauge>.+?)\s+(?<metres>\d+([.,]\d+)?)\s*m$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Wire();

    [GeneratedRegex(@"^fuse\s+(?<fuse>.+)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Fuse();
}
