using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

internal sealed class LampKind() : PartKind<Lamp>("lamp")
{
    private const string UsualCommon = "31";

    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults)
    {
        var works = map.Range("works", Unit.Volt, Limits.Volts);
        if (map.Inner("filaments", $"filaments of {map.Owner}") is not { } inner)
        {
            var (watts, volts) = RatedText.Read(map, "watts", "55 W at 12 V", Unit.Watt, Limits.Watts, defaults.LampVolts);
            return new Lamp(notes, works, [new Filament("1", watts)], "2", volts);
        }

        var filaments = ImmutableArray.CreateBuilder<Filament>();
        foreach (var entry in inner.Rest())
        {
            var watts = inner.TextOf(entry.Value, entry.Key.Value) is { } text
                ? inner.Parse(entry.Value, text, Unit.Watt, Limits.Watts)
                : null;
            filaments.Add(new Filament(entry.Key.Value, watts ?? 1));
        }

        if (filaments.Count == 0)
        {
            map.State.Error(inner.Map, "sheet.no-filaments", map.Owner);
            filaments.Add(new Filament("1", 1));
        }

        var lamp = new Lamp(
            notes, works, filaments.ToImmutable(), map.Text("common") ?? UsualCommon,
            map.Quantity("at", Unit.Volt, Limits.Volts, defaults.LampVolts));
        SheetNames.CheckTerminals(map, "filaments", lamp.Terminals);
        return lamp;
    }

    protected override void Write(Lamp part, MapWriter map, ComponentDefaults defaults)
    {
        if (part.Filaments is [{ Terminal: "1" } single] && part.Common == "2")
        {
            RatedText.Write(map, "watts", single.Watts, Unit.Watt, part.LampVolts);
        }
        else
        {
            var filaments = new MapWriter();
            foreach (var filament in part.Filaments)
            {
                filaments.Quantity(filament.Terminal, filament.Watts, Unit.Watt);
            }

            map.Add("filaments", filaments.Map);
            map.Text("common", part.Common, UsualCommon);
            map.Quantity("at", part.LampVolts, Unit.Volt, defaults.LampVolts);
        }

        map.Range("works", part.WorksVolts, Unit.Volt);
    }
}

internal sealed class LedKind() : PartKind<Led>("led")
{
    public override Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults)
    {
        var (amps, volts) = map.Pair(
                "runs", Unit.Ampere, Limits.Amps, "at", Unit.Volt, Limits.Volts, defaults["led.run-volts"].Value)
            ?? (defaults["led.run-amps"].Value, defaults["led.run-volts"].Value);
        return new Led(
            notes,
            map.Range("works", Unit.Volt, Limits.Volts),
            map.Quantity("forward", Unit.Volt, Limits.Volts, defaults.LedForwardVolts),
            amps,
            volts);
    }

    protected override void Write(Led part, MapWriter map, ComponentDefaults defaults)
    {
        RatedText.Write(map, "runs", part.RunAmps, Unit.Ampere, part.RunVolts);
        map.Quantity("forward", part.ForwardVolts, Unit.Volt, defaults.LedForwardVolts);
        map.Range("works", part.WorksVolts, Unit.Volt);
    }
}
