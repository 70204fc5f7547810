using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Batteries;
using Halfsplit.Bench.Budgets;
using Halfsplit.Bench.Fuses;
using Halfsplit.Bench.Loads;
using Halfsplit.Bench.Lookups;
using Halfsplit.Bench.Motors;
using Halfsplit.Bench.Pins;
using Halfsplit.Bench.Relays;
using Halfsplit.Bench.Wires;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Forms;

/// <summary>All aids as forms, grouped.</summary>
public static class BenchAids
{
    private static readonly AidInput Celsius = Number("celsius", Unit.Celsius) with { Usual = UsualText("wire-celsius") };

    private static readonly AidInput Supply = Number("supply", Unit.Volt) with { Usual = UsualText("supply") };

    private static readonly AidInput SystemVolts = new("system", InputKind.Choice) { Choices = ["12", "24"] };

    private static readonly AidInput Step = Number("meter-step", Unit.Volt) with { Times = 1e-3, Usual = UsualText("meter-step", 1e3) };

    private static readonly AidInput Bars = Number("bars", null) with { IsOptional = true, IsWhole = true };

    private static readonly AidInput Rated = Optional("rated-amps", Unit.Amp);

    private static readonly AidInput Reading = Many("reading", "help-bench.reading");

    /// <summary>The aids whose results speak of one part.</summary>
    private static readonly ImmutableHashSet<string> OfPart =
        ImmutableHashSet.Create("fuse", "relay", "contact", "battery", "two-loads", "cranking", "charging", "winding", "diode", "motor", "averages");

    public static ImmutableArray<Aid> All { get; } =
    [.. new Aid[]
    {
        new("wire", "wires",
            [
                Text("gauge", "help-bench.wire-gauge"), Number("length", Unit.Metre), Number("amps", Unit.Amp), new("return", InputKind.Flag), Celsius, Supply,
                Optional("allowed-drop", Unit.Volt),
            ],
            v => Gauges.Parse(v.Text("gauge")) is { IsGood: true, Result: { } gauge }
                ? WireAid.Of(new WireQuestion(gauge, v["length"], v["amps"], v.Flag("return"), v["celsius"], v["supply"], v.Maybe("allowed-drop"))).Then(WireAnswer.Of)
                : Outcome.Wrong<Answer>(Gauges.Parse(v.Text("gauge")).Problems)),
        new("drop", "wires",
            [Many("piece", "help-bench.piece"), Number("amps", Unit.Amp), Celsius, Optional("allowed-drop", Unit.Volt), new("starter", InputKind.Flag)], Drop),
        new("fuse", "fuses",
            [
                new("look", InputKind.Choice) { IsOptional = true, Choices = ["whole", "blown", "unclear"] },
                Optional("ohms", Unit.Ohm) with { MayBeOpen = true }, Optional("first-tab", Unit.Volt), Optional("second-tab", Unit.Volt),
            ],
            v => FuseCheck.Of(new FuseSigns(
                v.Text("look") switch { "whole" => FuseLook.Whole, "blown" => FuseLook.Blown, "unclear" => FuseLook.Unclear, _ => null },
                v.Maybe("ohms"), v.Maybe("first-tab"), v.Maybe("second-tab"))).Then(FuseCheck.Answer)),
        new("drain", "fuses", [Text("fuse", "help-bench.fuse-name"), Number("fuse-drop", Unit.Volt) with { Times = 1e-3 }, Step],
            v => FuseSpec.Parse(v.Text("fuse")) is { IsGood: true, Result: { } fuse }
                ? FuseDrain.Of(fuse, v["fuse-drop"], v["meter-step"]).Then(FuseDrain.Answer)
                : Outcome.Wrong<Answer>(FuseSpec.Parse(v.Text("fuse")).Problems)),
        new("drain-hunt", "fuses", [Many("hunt-fuse", "help-bench.hunt-fuse"), Optional("total", Unit.Amp), Optional("allowed-amps", Unit.Amp), Step], Hunt),
        new("relay", "relays", [Text("pins", "help-bench.pins") with { Usual = "1,2,3,4" }, Reading], v => PinAid.Relay(v.Text("pins"), v.Many("reading"))),
        new("cavities", "relays", [Text("cavities", "help-bench.cavities-names"), Many("function", "help-bench.function"), Reading],
            v => PinAid.Cavities(v.Text("cavities"), v.Many("function"), v.Many("reading"))),
        new("coil", "relays",
            [Number("coil-ohms", Unit.Ohm), Supply, new("coil-rated", InputKind.Choice) { Choices = ["12", "24", "6"] }],
            v => CoilPower.Of(v["coil-ohms"], v["supply"], Volts(v.Text("coil-rated"))).Then(CoilPower.Answer)),
        new("contact", "relays", [Number("contact-drop", Unit.Volt) with { Times = 1e-3 }, Number("load-current", Unit.Amp)],
            v => ContactDrop.Of(v["contact-drop"], v["load-current"]).Then(ContactDrop.Answer)),
        new("battery", "batteries",
            [Number("rest-volts", Unit.Volt), new("battery-type", InputKind.Choice) { Choices = ["flooded", "agm", "gel"] }, Celsius, SystemVolts],
            v => BatteryRest.Of(Enum.Parse<BatteryType>(v.Text("battery-type"), ignoreCase: true), v["rest-volts"], v["celsius"], Volts(v.Text("system"))).Then(BatteryRest.Answer)),
        new("two-loads", "batteries",
            [
                Number("light-volts", Unit.Volt), Number("light-amps", Unit.Amp), Number("heavy-volts", Unit.Volt), Number("heavy-amps", Unit.Amp),
                Optional("cold-cranking-amps", Unit.Amp), SystemVolts,
            ],
            v => BatteryOhms.Of(
                new(v["light-volts"], v["light-amps"]), new(v["heavy-volts"], v["heavy-amps"]), v.Maybe("cold-cranking-amps"), Volts(v.Text("system"))).Then(BatteryOhms.Answer)),
        new("cranking", "batteries",
            [
                Number("cranking-volts", Unit.Volt), Celsius, Optional("amps", Unit.Amp), Optional("starter-positive", Unit.Volt), Optional("starter-negative", Unit.Volt), SystemVolts,
            ],
            v => Cranking.Of(new CrankingQuestion(
                v["cranking-volts"], v["celsius"], v.Maybe("amps"), v.Maybe("starter-positive"), v.Maybe("starter-negative"), Volts(v.Text("system")))).Then(Cranking.Answer)),
        new("charging", "batteries",
            [Number("charging-volts", Unit.Volt), Optional("ripple", Unit.Volt), Optional("charging-positive", Unit.Volt), Optional("charging-negative", Unit.Volt), SystemVolts],
            v => Charging.Of(new ChargingQuestion(
                v["charging-volts"], v.Maybe("ripple"), v.Maybe("charging-positive"), v.Maybe("charging-negative"), Volts(v.Text("system"))))),
        new("lamp", "loads", RatedInputs, v => FilamentAid.Of(true, v["watts"], v["rated-volts"]).Then(FilamentAid.Answer)),
        new("heater", "loads", RatedInputs, v => FilamentAid.Of(false, v["watts"], v["rated-volts"]).Then(FilamentAid.Answer)),
        new("winding", "loads",
            [new("winding-kind", InputKind.Choice) { Choices = WindingAid.Kinds }, Number("ohms", Unit.Ohm) with { MayBeOpen = true }, Celsius],
            v => WindingAid.Of(v.Text("winding-kind"), v["ohms"], v["celsius"]).Then(WindingAid.Answer)),
        new("diode", "loads",
            [Number("one-way", Unit.Volt) with { MayBeOpen = true }, Number("other-way", Unit.Volt) with { MayBeOpen = true }],
            v => DiodeAid.Of(v["one-way"], v["other-way"])),
        new("sensor-supply", "loads", [Number("sensor-volts", Unit.Volt), Optional("unplugged-volts", Unit.Volt), Optional("sensor-ground", Unit.Volt)],
            v => SensorSupply.Of(new SensorQuestion(v["sensor-volts"], v.Maybe("unplugged-volts"), v.Maybe("sensor-ground")))),
        new("motor", "motors",
            [
                new("recording", InputKind.File), Optional("sample-rate", Unit.Hertz), Number("full-scale", Unit.Amp) with { Usual = UsualText("full-scale") }, Bars, Rated,
            ], Motor),
        new("averages", "motors",
            [Number("mean-amps", Unit.Amp), Optional("peak-amps", Unit.Amp), Optional("ripple-hertz", Unit.Hertz), Bars, Rated],
            v => MotorAverages.Of(new AveragesQuestion(
                v["mean-amps"], v.Maybe("peak-amps"), v.Maybe("ripple-hertz"), v.MaybeCount("bars"), v.Maybe("rated-amps"))).Then(MotorAverages.Answer)),
        new("terminal", "look-up", [Text("terminal", null)], v => TerminalTable.Of(v.Text("terminal"))),
        new("colour", "look-up", [Text("colour", null)], v => ColourTable.Of(v.Text("colour"))),
        new("rating", "look-up", [Text("fuse", "help-bench.fuse-name")], v => FuseRatings.Of(v.Text("fuse"))),
        new("gauge", "look-up", [Text("gauge", "help-bench.wire-gauge")], v => GaugeTable.Of(v.Text("gauge"))),
    }.Select(a => a with { IsOfPart = OfPart.Contains(a.Name) })];

    private static ImmutableArray<AidInput> RatedInputs => [Number("watts", Unit.Watt), Number("rated-volts", Unit.Volt) with { Usual = UsualText("rated-volts") }];

    /// <summary>The aid of this name; null if there is none.</summary>
    public static Aid? Find(string name) => All.FirstOrDefault(a => a.Name == name);

    /// <summary>What stands in an input at first, told in its own unit.</summary>
    private static string UsualText(string limit, double times = 1) => NumberText.Of(times * BenchDefaults.Usual(limit), "0.######", CultureInfo.InvariantCulture);

    private static AidInput Number(string name, Unit? unit) => new(name, InputKind.Number, unit);

    private static AidInput Optional(string name, Unit unit) => Number(name, unit) with { IsOptional = true };

    private static AidInput Text(string name, string? hint) => new(name, InputKind.Text) { Hint = hint };

    private static AidInput Many(string name, string hint) => new(name, InputKind.Many) { Hint = hint, IsOptional = true };

    private static double Volts(string choice) => double.Parse(choice, CultureInfo.InvariantCulture);

    private static Outcome<Answer> Drop(AidValues values)
    {
        var pieces = values.Many("piece").Select(p => ChainLink.Parse(p, values["celsius"])).ToImmutableArray();
        return pieces.All(p => p.IsGood)
            ? DropBudget.Of([.. pieces.Select(p => p.Result!)], values["amps"], values.Maybe("allowed-drop"), values.Flag("starter")).Then(DropBudget.Answer)
            : Outcome.Wrong<Answer>([.. pieces.SelectMany(p => p.Problems)]);
    }

    private static Outcome<Answer> Hunt(AidValues values)
    {
        var fuses = values.Many("hunt-fuse").Select(HuntFuse.Parse).ToImmutableArray();
        return fuses.All(f => f.IsGood)
            ? DrainHunt.Of(new HuntQuestion(
                [.. fuses.Select(f => f.Result!)], values.Maybe("total"), values.Maybe("allowed-amps") ?? BenchDefaults.Table["drain.allowed-amps"],
                values["meter-step"])).Then(DrainHuntAnswer.Of)
            : Outcome.Wrong<Answer>([.. fuses.SelectMany(f => f.Problems)]);
    }

    private static Outcome<Answer> Motor(AidValues values)
    {
        var trace = TraceBytes.Parse(values.Typed.File.Span, values.Maybe("sample-rate"), values["full-scale"]);
        return trace.IsGood
            ? MotorReading.Of(new MotorQuestion(trace.Result!, values.MaybeCount("bars"), values.Maybe("rated-amps"))).Then(MotorAnswer.Of)
            : Outcome.Wrong<Answer>(trace.Problems);
    }
}
