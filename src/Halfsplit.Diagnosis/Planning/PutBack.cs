using System.Collections.Frozen;
using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>One thing to put back.</summary>
/// <param name="Id">Names it for scripts: <c>jumper-off K2.30 K2.87</c>, <c>refit F19</c>, <c>close kick panel</c>.</param>
/// <param name="Text">What to do.</param>
/// <param name="Minutes">What it takes.</param>
public sealed record PutBackItem(string Id, Message Text, double Minutes);

/// <summary>What was handled in the course of a job, whether or not it is back in place by now.</summary>
/// <param name="Unplugged">Connectors that were apart.</param>
/// <param name="Removed">Fuses and relays that were out of their sockets or are new.</param>
/// <param name="BatteryLifted">A repair was done for which the battery comes off.</param>
/// <param name="CodesMayBeSet">A module with stored codes saw a circuit broken, or a scan tool was used.</param>
/// <param name="RemoteStarterClipped">A remote starter switch was clipped on: left there, anybody's touch cranks.</param>
public sealed record Handled(
    ImmutableSortedSet<string> Unplugged, ImmutableSortedSet<string> Removed, bool BatteryLifted, bool CodesMayBeSet, bool RemoteStarterClipped)
{
    /// <summary>Nothing was touched yet.</summary>
    public static Handled Nothing { get; } = new(
        ImmutableSortedSet.Create<string>(StringComparer.Ordinal), ImmutableSortedSet.Create<string>(StringComparer.Ordinal), false, false, false);
}

/// <summary>
/// What has to be put back before a car is given away: jumpers off, fuses and relays in, connectors latched, places
/// closed, a last look. Follows from how the car stands and from what was handled; nothing is written by hand.
/// </summary>
public static class PutBack
{
    private static readonly FrozenDictionary<string, double> Table =
        DataFile.Numbers(typeof(PutBack).Assembly, "put-back.csv", "item");

    /// <summary>
    /// Minutes to put back a car that stands so, without what depends on the course of the job: what a plan adds at its end.
    /// </summary>
    public static double MinutesOf(Circuit circuit, Position position)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(position);
        var now = position.Arrangement;
        var minutes = Table["last-look"]
            + (now.Jumpers.Length * Effort.Minute("jumper") / 2)
            + (now.Removed.Count * Effort.Minute("refit"))
            + (now.Unplugged.Count * Effort.Minute("plug"));
        if (now.Condition != CheckCatalog.RestCondition(circuit))
        {
            minutes += Effort.Minute("turn-key");
        }

        foreach (var name in now.Opened)
        {
            minutes += Table["close-share"] * (circuit.FindPlace(name)?.OpenMinutes ?? 0);
        }

        return Math.Round(minutes, 2);
    }

    /// <summary>The list, in the order in which it is done.</summary>
    public static ImmutableArray<PutBackItem> ListOf(Circuit circuit, Position position, Handled handled)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(position);
        ArgumentNullException.ThrowIfNull(handled);
        var now = position.Arrangement;
        var rest = CheckCatalog.RestCondition(circuit);
        var list = ImmutableArray.CreateBuilder<PutBackItem>();
        if (now.Condition != rest)
        {
            list.Add(new("condition", new Message("step.condition", rest), Effort.Minute("turn-key")));
        }

        if (handled.RemoteStarterClipped)
        {
            // Its minutes are in those of the readings that used it.
            list.Add(new("remote-starter-off", new Message("put-back.remote-starter"), 0));
        }

        foreach (var jumper in now.Jumpers)
        {
            list.Add(new(
                $"jumper-off {jumper.From} {jumper.To}", new Message("step.jumper-off", jumper.From, jumper.To),
                Effort.Minute("jumper") / 2));
        }

        foreach (var part in now.Removed)
        {
            list.Add(new($"refit {part}", Refit(circuit, part), Effort.Minute("refit")));
        }

        foreach (var part in now.Unplugged)
        {
            list.Add(new($"plug {part}", new Message("put-back.plug", Describe.Part(circuit, part)), Effort.Minute("plug")));
        }

        foreach (var part in handled.Removed.Except(now.Removed))
        {
            list.Add(new($"seated {part}", Seated(circuit, part), Table["seated"]));
        }

        foreach (var part in handled.Unplugged.Except(now.Unplugged))
        {
            list.Add(new($"latched {part}", new Message("put-back.latched", Describe.Part(circuit, part)), Table["latched"]));
        }

        if (handled.BatteryLifted)
        {
            list.Add(new("battery-clamp", new Message("put-back.battery"), Table["battery-clamp"]));
        }

        if (handled.CodesMayBeSet)
        {
            list.Add(new("codes", new Message("put-back.codes"), Table["codes"]));
        }

        foreach (var place in now.Opened.Select(circuit.FindPlace).OfType<Place>().Where(p => p.OpenMinutes > 0))
        {
            list.Add(new(
                $"close {place.Name}", new Message("put-back.close", place.Name),
                Math.Round(Table["close-share"] * place.OpenMinutes, 2)));
        }

        list.Add(new("last-look", new Message("put-back.last-look"), Table["last-look"]));
        return list.ToImmutable();
    }

    private static Message Refit(Circuit circuit, string part) => circuit.Find(part) is Fuse fuse
        ? new Message("put-back.refit-fuse", Describe.Seated(circuit, part), fuse.RatingAmps)
        : new Message("step.refit", Describe.Seated(circuit, part));

    private static Message Seated(Circuit circuit, string part) => circuit.Find(part) is Fuse fuse
        ? new Message("put-back.fuse-seated", Describe.Part(circuit, part), fuse.RatingAmps)
        : new Message("put-back.seated", Describe.Part(circuit, part));
}
