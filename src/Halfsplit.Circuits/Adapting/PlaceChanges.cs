using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Adapting;

/// <summary>Places, and the minutes to get at them.</summary>
internal static class PlaceChanges
{
    public static Message? Open(AdaptingDraft draft, OpenPlace change)
    {
        if (Existing(draft, change.Place) is not { } place)
        {
            return new Message(
                "adapt.no-place", change.Place, Spelling.Hint(change.Place, draft.Places.Select(p => p.Name)), Names(draft));
        }

        if (change.Minutes is not { } minutes)
        {
            draft.Assume("adapt.assumed-minutes-stay", place.Name, Quantity.Write(place.OpenMinutes, Unit.Minute));
            return null;
        }

        draft.Places[draft.Places.IndexOf(place)] = place with { OpenMinutes = minutes };
        return Possible(minutes);
    }

    /// <summary>The place a choice means, added if it is new.</summary>
    public static Place? Find(AdaptingDraft draft, PlaceChoice choice, out Message? problem)
    {
        problem = null;
        var name = choice.Name.Trim();
        if (Existing(draft, name) is { } place)
        {
            if (choice.Minutes is { } minutes && minutes != place.OpenMinutes)
            {
                problem = Possible(minutes);
                draft.Places[draft.Places.IndexOf(place)] = place with { OpenMinutes = minutes };
            }

            return problem is null ? place : null;
        }

        if (choice.Minutes is null && !choice.MinutesUnknown)
        {
            problem = new Message("adapt.new-place", name, Spelling.Hint(name, draft.Places.Select(p => p.Name)), Names(draft));
            return null;
        }

        var open = choice.Minutes ?? draft.Defaults["guessed.place-minutes"].Value;
        problem = name.Length == 0 || name.Contains("->", StringComparison.Ordinal) ? new Message("sheet.bad-place-name", name) : Possible(open);
        if (problem is not null)
        {
            return null;
        }

        place = new Place(string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), open, [], []);
        draft.Places.Add(place);
        if (choice.Minutes is null)
        {
            draft.Assume("adapt.assumed-minutes", place.Name, Quantity.Write(open, Unit.Minute));
        }

        draft.Assume("adapt.assumed-place", place.Name, Quantity.Write(place.Reach, Unit.Metre));
        return place;
    }

    private static Place? Existing(AdaptingDraft draft, string name) =>
        draft.Places.Find(p => p.Name == name) ?? draft.Places.Find(p => string.Equals(p.Name, name, StringComparison.OrdinalIgnoreCase));

    private static Message? Possible(double minutes) => Limits.Minutes.Contains(minutes)
        ? null
        : new Message(
            "sheet.impossible", Quantity.Write(minutes, Unit.Minute), Quantity.Write(Limits.Minutes.Low, Unit.Minute),
            Quantity.Write(Limits.Minutes.High, Unit.Minute));

    private static string Names(AdaptingDraft draft) => string.Join(", ", draft.Places.Select(p => p.Name));
}
