using System.Collections.Immutable;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Adapting;

/// <summary>What a sheet says of one part: its name in the circuit and in plain words, place, slot, price.</summary>
internal static class PartChanges
{
    public static Message? Rename(AdaptingDraft draft, RenamePart change)
    {
        if (NameSearch.Part(draft.Parent, change.Part, out var problem) is not { } part)
        {
            return problem;
        }

        var (old, id) = (part.Id, change.Id.Trim());
        if (id == old)
        {
            return null;
        }

        if (old == Metal.Body)
        {
            return new Message("adapt.body-keeps-name");
        }

        if (!string.Equals(old, id, StringComparison.OrdinalIgnoreCase) && NameSearch.NewId(draft, id, string.Concat(old.TakeWhile(char.IsAsciiLetter)), out problem) is null)
        {
            return problem;
        }

        for (var i = 0; i < draft.Parts.Count; i++)
        {
            draft.Parts[i] = draft.Parts[i] switch
            {
                var own when own.Id == old => own with { Notes = own.Notes with { Id = id } },
                Connector c when c.BelongsToB.Contains(old) => c with { BelongsToB = [.. c.BelongsToB.Select(b => b == old ? id : b)] },
                Ground g when g.Metal == old => g with { Metal = id },
                var other => other,
            };
        }

        draft.Wiring.Rename(old, id);
        for (var i = 0; i < draft.Conditions.Count; i++)
        {
            var condition = draft.Conditions[i];
            draft.Conditions[i] = condition with
            {
                Settings = condition.Settings.ToImmutableSortedDictionary(s => Setting(s.Key, old, id), s => s.Value, StringComparer.Ordinal),
                Needs = [.. condition.Needs.Select(n => n == old ? id : n)],
            };
        }

        for (var i = 0; i < draft.Complaints.Count; i++)
        {
            draft.Complaints[i] = draft.Complaints[i].Load == old ? draft.Complaints[i] with { Load = id } : draft.Complaints[i];
        }

        return null;
    }

    public static Message? Name(AdaptingDraft draft, NamePart change)
    {
        if (change.Name is null && NameSearch.Part(draft.Parent, change.Part, out _) is { } part)
        {
            draft.Assume("adapt.assumed-name", part.Id);
        }

        var name = change.Name?.Trim();
        return Note(draft, change.Part, _ => notes => notes with { Name = string.IsNullOrEmpty(name) ? null : name });
    }

    public static Message? Slot(AdaptingDraft draft, SlotPart change)
    {
        if (change.Slot is null && NameSearch.Part(draft.Parent, change.Part, out _) is { } part)
        {
            draft.Assume("adapt.assumed-slot", part.Id);
        }

        var slot = change.Slot?.Trim();
        if (NameSearch.Part(draft.Parent, change.Part, out _) is { Notes.Place: { } place } own && !string.IsNullOrEmpty(slot)
            && Holder(draft, own, place, slot) is { } holder)
        {
            var free = draft.Parent.FindPlace(place)?.Grid?.Named().Where(s => s != own.Notes.Slot && Holder(draft, own, place, s) is null).ToList();
            return free is null ? new Message("adapt.slot-taken", slot, place, holder.Id)
                : free.Count == 0 ? new Message("adapt.slot-none-free", slot, place, holder.Id)
                : new Message("adapt.slot-taken-free", slot, place, holder.Id, string.Join(", ", free));
        }

        return Note(draft, change.Part, _ => notes => notes with { Slot = string.IsNullOrEmpty(slot) ? null : slot });
    }

    public static Message? Price(AdaptingDraft draft, PricePart change)
    {
        if (change.Price is { } price && !(price.Low <= price.High && Limits.Price.Contains(price.Low) && Limits.Price.Contains(price.High)))
        {
            return new Message("adapt.bad-price");
        }

        return Note(draft, change.Part, part =>
        {
            if (change.Price is null && draft.Defaults.PriceOf(part.Kind) is { } usual)
            {
                draft.Assume("adapt.assumed-price", part.Id, usual.Low, usual.High);
            }

            return notes => notes with { Price = change.Price };
        });
    }

    public static Message? Place(AdaptingDraft draft, PlacePart change)
    {
        if (NameSearch.Part(draft.Parent, change.Part, out var problem) is not { } part)
        {
            return problem;
        }

        if (change.Place is null)
        {
            draft.Assume(part.Notes.Place is null ? "adapt.assumed-no-place" : "adapt.assumed-same-place", part.Id, part.Notes.Place ?? "");
            return null;
        }

        if (PlaceChanges.Find(draft, change.Place, out problem) is not { } place)
        {
            return problem;
        }

        // A slot of the old place says nothing of the new one.
        var loses = place.Name != part.Notes.Place && part.Notes.Slot is not null;
        if (loses)
        {
            draft.Assume("adapt.assumed-slot", part.Id);
        }

        // Fuel is in the part and not in the place: a pump that sits elsewhere is as dangerous to work at.
        var left = draft.Parent.FindPlace(part.Notes.Place)?.Cautions ?? [];
        var keeps = part is Load && left.Contains(FuelWords.Caution) && !place.Cautions.Contains(FuelWords.Caution) && !part.Notes.Cautions.Contains(FuelWords.Caution);
        if (keeps)
        {
            draft.Assume("adapt.assumed-caution", part.Id, FuelWords.Caution);
        }

        return Note(draft, part.Id, _ => notes => notes with
        {
            Place = place.Name,
            Slot = loses ? null : notes.Slot,
            Cautions = keeps ? notes.Cautions.Add(FuelWords.Caution) : notes.Cautions,
        });
    }

    /// <summary>The other part that sits in a slot.</summary>
    private static Part? Holder(AdaptingDraft draft, Part part, string place, string slot) =>
        draft.Parts.Find(p => p.Id != part.Id && p.Notes.Place == place && p.Notes.Slot == slot);

    private static Message? Note(AdaptingDraft draft, string name, Func<Part, Func<PartNotes, PartNotes>> change)
    {
        if (NameSearch.Part(draft.Parent, name, out var problem) is not { } part)
        {
            return problem;
        }

        draft.Replace(part, part with { Notes = change(part)(part.Notes) });
        return null;
    }

    private static string Setting(string what, string old, string id) => TerminalName.Parse(what) is var name && name.Part == old
        ? (name with { Part = id }).ToString()
        : what;
}
