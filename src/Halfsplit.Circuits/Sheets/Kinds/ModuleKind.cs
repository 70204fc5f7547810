using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

internal sealed class ModuleKind() : PartKind<Module>("module")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults)
    {
        var feeds = Required(map, "feeds", "feeds: [30, 15]");
        var grounds = Required(map, "grounds", "grounds: [31]");
        var outputs = ImmutableArray.CreateBuilder<ModuleOutput>();
        if (map.Inner("outputs", $"outputs of {map.Owner}") is { } outputMap)
        {
            foreach (var entry in outputMap.Rest())
            {
                if (outputMap.Of(entry, $"output {entry.Key.Value} of {map.Owner}") is { } inner)
                {
                    outputs.Add(Output(inner, entry.Key.Value, defaults));
                    inner.Finish();
                }
            }
        }

        var inputs = ImmutableArray.CreateBuilder<ModuleInput>();
        if (map.Inner("inputs", $"inputs of {map.Owner}") is { } inputMap)
        {
            foreach (var entry in inputMap.Rest())
            {
                if (inputMap.Of(entry, $"input {entry.Key.Value} of {map.Owner}") is { } inner)
                {
                    inputs.Add(Input(inner, entry.Key.Value, defaults));
                    inner.Finish();
                }
            }
        }

        var module = new Module(
            notes, feeds, grounds, outputs.ToImmutable(), inputs.ToImmutable(),
            map.Quantity("works from", Unit.Volt, Limits.Volts, defaults.ModuleMinimumVolts),
            map.Quantity("draws", Unit.Ampere, Limits.AmpsOrZero, defaults.ModuleOwnAmps),
            map.YesNo("scan tool", false),
            map.Texts("buses"));
        SheetNames.CheckTerminals(map, "kind", module.Terminals);
        return module;
    }

    protected override void Write(Module part, MapWriter map, ComponentDefaults defaults)
    {
        map.Texts("feeds", part.Feeds);
        map.Texts("grounds", part.Grounds);
        map.Quantity("works from", part.MinimumVolts, Unit.Volt, defaults.ModuleMinimumVolts);
        map.Quantity("draws", part.OwnAmps, Unit.Ampere, defaults.ModuleOwnAmps);
        map.YesNo("scan tool", part.Scan);
        map.Texts("buses", part.Buses);
        WriteEach(map, "outputs", part.Outputs, o => o.Name, (o, inner) => WriteOutput(o, inner, defaults));
        WriteEach(map, "inputs", part.Inputs, i => i.Name, (i, inner) => WriteInput(i, inner, defaults));
    }

    private static ImmutableArray<string> Required(MapReader map, string key, string example)
    {
        if (map.Entry(key) is null)
        {
            map.Missing(key, example);
        }

        return map.Texts(key);
    }

    private static ModuleOutput Output(MapReader map, string name, ComponentDefaults defaults)
    {
        if (map.Entry("side") is null)
        {
            map.Missing("side", "side: low");
        }

        var bias = map.Text("bias") == "none"
            ? null
            : map.Pair(
                "bias", Unit.Volt, Limits.VoltsOrZero, "through", Unit.Ohm, Limits.Ohms, defaults["module.bias-ohms"].Value);
        return new ModuleOutput(
            name,
            map.Word("side", OutputSide.Low, ("low", OutputSide.Low), ("high", OutputSide.High)),
            map.Word(
                "drive", OutputDrive.Steady,
                ("steady", OutputDrive.Steady), ("pulsed", OutputDrive.Pulsed), ("bus", OutputDrive.Bus)),
            map.Quantity("on", Unit.Ohm, Limits.Ohms, defaults.ModuleOutputOhms),
            map.Quantity("limit", Unit.Ampere, Limits.Amps, defaults.ModuleOutputLimitAmps),
            map.YesNo("latches", false),
            bias?.First ?? 0,
            bias?.Second ?? defaults["module.bias-ohms"].Value,
            map.Texts("needs"));
    }

    private static void WriteOutput(ModuleOutput output, MapWriter map, ComponentDefaults defaults)
    {
        map.Text("side", output.Side == OutputSide.Low ? "low" : "high");
        map.Text("drive", output.Drive switch
        {
            OutputDrive.Pulsed => "pulsed",
            OutputDrive.Bus => "bus",
            _ => null,
        });
        map.Quantity("on", output.OnOhms, Unit.Ohm, defaults.ModuleOutputOhms);
        map.Quantity("limit", output.LimitAmps, Unit.Ampere, defaults.ModuleOutputLimitAmps);
        map.YesNo("latches", output.Latches);
        if (output.BiasVolts != 0 || output.BiasOhms != defaults["module.bias-ohms"].Value)
        {
            map.Text("bias", $"{Quantity.Write(output.BiasVolts, Unit.Volt)} through {Quantity.Write(output.BiasOhms, Unit.Ohm)}");
        }

        map.Texts("needs", output.Needs);
    }

    private static ModuleInput Input(MapReader map, string name, ComponentDefaults defaults)
    {
        var high = map.Word("active", map.Entry("below") is null, ("high", true), ("low", false));
        var (right, wrong) = high ? ("above", "below") : ("below", "above");
        if (map.Entry(wrong) is { } entry)
        {
            map.State.Error(entry.Key, "sheet.threshold-side", wrong, high ? "high" : "low", right);
        }

        var (volts, ohms) = map.Pair(
                "pull", Unit.Volt, Limits.VoltsOrZero, "through", Unit.Ohm, Limits.Ohms, defaults["module.pull-ohms"].Value)
            ?? (UsualPull(high, defaults), defaults["module.pull-ohms"].Value);
        return new ModuleInput(
            name, high,
            map.Quantity(right, Unit.Volt, Limits.Volts, defaults["module.threshold-volts"].Value),
            volts, ohms);
    }

    private static void WriteInput(ModuleInput input, MapWriter map, ComponentDefaults defaults)
    {
        map.Text("active", input.ActiveHigh ? "high" : "low");
        map.Quantity(
            input.ActiveHigh ? "above" : "below", input.ThresholdVolts, Unit.Volt, defaults["module.threshold-volts"].Value);
        if (input.PullVolts != UsualPull(input.ActiveHigh, defaults) || input.PullOhms != defaults["module.pull-ohms"].Value)
        {
            map.Text("pull", $"{Quantity.Write(input.PullVolts, Unit.Volt)} through {Quantity.Write(input.PullOhms, Unit.Ohm)}");
        }
    }

    /// <summary>An open input reads as not active: one active low is pulled up, one active high down.</summary>
    private static double UsualPull(bool activeHigh, ComponentDefaults defaults) => activeHigh ? 0 : defaults.NominalVolts;

    private static void WriteEach<T>(
        MapWriter map, string key, ImmutableArray<T> items, Func<T, string> name, Action<T, MapWriter> write)
    {
        if (items.IsEmpty)
        {
            return;
        }

        var all = new MapWriter();
        foreach (var item in items)
        {
            var inner = new MapWriter();
            write(item, inner);
            all.Add(name(item), inner.Map);
        }

        map.Add(key, all.Map);
    }
}
