using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Kinds;
using Halfsplit.Circuits.Sheets.Quantities;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets;

/// <summary>Reads the parts: the common keys here, the others by kind.</summary>
internal sealed class PartReader(ReadingState state)
{
    private readonly ImmutableArray<Part>.Builder _parts = ImmutableArray.CreateBuilder<Part>();
    private readonly HashSet<string> _broken = new(StringComparer.Ordinal);

    public ImmutableArray<Part> Parts => _parts.ToImmutable();

    /// <summary>Names of parts that could not be read whole; what the wiring says of them cannot be judged.</summary>
    public IReadOnlySet<string> Broken => _broken;

    public void Read(MapReader parts)
    {
        var entries = parts.Rest();
        if (entries.Count > SheetLimits.Parts)
        {
            state.Error(parts.Map, "sheet.too-many-of", "parts", SheetLimits.Parts);
        }

        var defaults = ComponentDefaults.For(NominalVolts(entries));
        foreach (var entry in entries.Take(SheetLimits.Parts))
        {
            var before = state.ErrorCount;
            if (One(parts, entry, defaults) is { } part)
            {
                _parts.Add(part);
            }

            if (state.ErrorCount > before)
            {
                _broken.Add(entry.Key.Value);
            }
        }
    }

    private Part? One(MapReader parts, SheetEntry entry, ComponentDefaults defaults)
    {
        var id = entry.Key.Value;
        if (!SheetNames.IsPart(id))
        {
            state.Error(entry.Key, "sheet.bad-part-name", id);
            return null;
        }

        if (parts.Of(entry, $"part {id}") is not { } untyped)
        {
            return null;
        }

        var word = untyped.Text("kind");
        var kind = word is null ? null : PartKinds.Find(word);
        if (kind is null)
        {
            var words = PartKinds.All.Select(k => k.Word).ToArray();
            if (untyped.Entry("kind") is not { } written)
            {
                untyped.Missing("kind", "kind: fuse");
            }
            else if (word is not null)
            {
                state.Error(written.Value, "sheet.unknown-kind", word, string.Join(", ", words), Spelling.Hint(word, words));
            }

            return null;
        }

        var map = parts.Of(entry, $"{kind.Word} {id}")!;
        _ = map.Text("kind");
        var notes = new PartNotes(
            id,
            map.Text("name"),
            map.Text("place"),
            map.Text("slot"),
            map.Range("price", Unit.None, Limits.Price),
            map.Texts("cautions"),
            map.YesNo("probe", true));
        var part = kind.Read(map, notes, defaults);
        map.Finish();
        return part;
    }

    /// <summary>Defaults hang on the supply, so the battery's volts are looked for before anything else is read.</summary>
    private static double NominalVolts(List<SheetEntry> entries)
    {
        foreach (var map in entries.Select(e => e.Value).OfType<SheetMap>())
        {
            if (Value(map, "kind") == "battery" && Value(map, "nominal") is { } text
                && Quantity.TryParse(text, Unit.Volt, BatteryKind.Nominal, out var volts, out _))
            {
                return volts;
            }
        }

        return 12;
    }

    private static string? Value(SheetMap map, string key) =>
        map.Entries.Where(e => e.Key.Value == key).Select(e => e.Value).OfType<SheetText>().FirstOrDefault()?.Value.Trim();
}
