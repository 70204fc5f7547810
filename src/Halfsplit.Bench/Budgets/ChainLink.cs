using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Fuses;
using Halfsplit.Bench.Wires;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Bench.Budgets;

/// <summary>One piece of a path that the load's current takes.</summary>
/// <param name="Name">As it was written: <c>wire 2.5mm2 4.2m</c>, <c>fuse 15A</c>, <c>connector</c>.</param>
/// <param name="Ohms">Of a healthy piece, between its lowest and highest.</param>
/// <param name="MeasuredVolts">What a meter showed across it under the load; null where nothing was measured.</param>
public sealed record ChainLink(string Name, ValueRange Ohms, double? MeasuredVolts = null)
{
    /// <summary>Amps above which it burns before anything settles; null where that is not known.</summary>
    public double? MostAmps { get; init; }

    private const string Wire = "wire ", Fuse = "fuse ";

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
        var (name, measured) = (text.Trim(), (double?)null);
        if (text.IndexOf('=', StringComparison.Ordinal) is > 0 and var sign)
        {
            name = text[..sign].Trim();
            measured = TypedQuantity.Read(text[(sign + 1)..], Quantity.Volts);
            if (measured is not >= 0)
            {
                return Wrong(text);
            }
        }

        if (Rows.TryGetValue(name, out var row))
        {
            return Outcome.Of(new ChainLink(name, ComponentDefaults.TwelveVolts[row].Range, measured));
        }

        return name.StartsWith(Wire, StringComparison.OrdinalIgnoreCase) ? OfWire(name, celsius, measured, text)
            : name.StartsWith(Fuse, StringComparison.OrdinalIgnoreCase) ? OfFuse(name, measured)
            : Wrong(text);
    }

    /// <summary>The gauge, and at the end the metres: <c>wire 14 AWG 4.2 m</c>.</summary>
    private static Outcome<ChainLink> OfWire(string name, double celsius, double? measured, string text)
    {
        var body = name[Wire.Length..].Trim();
        if (body.EndsWith('m'))
        {
            var length = body[..^1].TrimEnd();
            var blank = length.LastIndexOf(' ');
            if (blank > 0 && TypedQuantity.Number(length[blank..]) is var (metres, behind) && behind.Length == 0)
            {
                return Gauges.Parse(length[..blank]) is { IsGood: false } wrong ? Outcome.Wrong<ChainLink>(wrong.Problems)
                    : OfWire(name, Gauges.Parse(length[..blank]).Result!, metres, celsius, measured);
            }
        }

        return Wrong(text);
    }

    private static Outcome<ChainLink> OfWire(string name, WireGauge gauge, double metres, double celsius, double? measured)
    {
        var limits = new InputLimits().Within("length", metres, "length", Unit.Metre).Within("celsius", celsius, "wire-celsius", Unit.Celsius);
        if (!limits.AreKept)
        {
            return Outcome.Wrong<ChainLink>(limits.Problems);
        }

        var perMetre = gauge.OhmsPerMetre(celsius).Range!.Value;
        return Outcome.Of(new ChainLink(name, new ValueRange(perMetre.Low * metres, perMetre.High * metres), measured) { MostAmps = WireAid.MostAmps(gauge) });
    }

    private static Outcome<ChainLink> OfFuse(string name, double? measured) => FuseSpec.Parse(name[Fuse.Length..]).Then(spec =>
    {
        var cold = spec.ColdOhms.Range!.Value;
        return new ChainLink(name, cold with { High = cold.High * BenchDefaults.Table["fuse.hot-factor"] }, measured) { MostAmps = spec.MostAmps };
    });

    private static Outcome<ChainLink> Wrong(string text) => Outcome.Wrong<ChainLink>(new Message("bench-limit.link", text, Words));
}
