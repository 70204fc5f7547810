using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>How the car and the meter stand now: what the next check starts from.</summary>
/// <param name="Arrangement">Condition, what is unplugged, removed, jumpered, and the places opened so far.</param>
/// <param name="Instrument">The meter's setting; null before the first reading.</param>
/// <param name="Black">Where the black lead is clipped.</param>
public sealed record Position(Arrangement Arrangement, Instrument? Instrument, TerminalName? Black)
{
    /// <summary>Conditions that take minutes and were reached so far: what got hot is taken to stay so.</summary>
    public ImmutableSortedSet<string> Reached { get; init; } = ImmutableSortedSet.Create<string>(StringComparer.Ordinal);

    /// <summary>Key off, everything in place, nothing opened.</summary>
    public static Position Start(Circuit circuit) => new(new Arrangement(CheckCatalog.RestCondition(circuit)), null, null);

    /// <summary>The position after a check was done.</summary>
    public Position After(Circuit circuit, Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        if (check.Kind == CheckKind.PutBack)
        {
            return Start(circuit);
        }

        var opened = Arrangement.Opened.Union(Access.PlacesOf(circuit, check));
        return new Position(
            check.Arrangement with { Opened = opened },
            check.Probe.Instrument is Simulation.Instruments.Instrument.Eye or Simulation.Instruments.Instrument.Ear
                ? Instrument
                : check.Probe.Instrument,
            check.Probe.Black ?? Black)
        {
            Reached = Reached.Union(Slow(circuit, check.Arrangement.Condition).Select(c => c.Name)),
        };
    }

    public bool Equals(Position? other) =>
        other is not null && Arrangement == other.Arrangement && Instrument == other.Instrument && Black == other.Black && Reached.SetEquals(other.Reached);

    public override int GetHashCode() => HashCode.Combine(Arrangement, Instrument, Black, Reached.Count);

    /// <summary>The conditions on the way to this one, itself included, that take minutes and were not reached yet; in the order of the way.</summary>
    public IEnumerable<Condition> ToWaitFor(Circuit circuit, string condition) => Slow(circuit, condition).Where(c => !Reached.Contains(c.Name)).Reverse();

    /// <summary>The last one first.</summary>
    private static IEnumerable<Condition> Slow(Circuit circuit, string name)
    {
        for (var at = circuit.FindCondition(name); at is not null; at = at.After is null ? null : circuit.FindCondition(at.After))
        {
            if (at.TakesMinutes > 0)
            {
                yield return at;
            }
        }
    }
}

/// <summary>Which places a check needs open.</summary>
public static class Access
{
    /// <summary>Names of the places, those that take no time included.</summary>
    public static ImmutableSortedSet<string> PlacesOf(Circuit circuit, Check check)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(check);
        var places = ImmutableSortedSet.CreateBuilder<string>(StringComparer.Ordinal);
        foreach (var part in PartsOf(circuit, check))
        {
            if (part.Notes.Place is { } place && circuit.FindPlace(place) is not null)
            {
                places.Add(place);
            }
        }

        return places.ToImmutable();
    }

    /// <summary>The parts a check touches.</summary>
    public static IEnumerable<Part> PartsOf(Circuit circuit, Check check)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(check);
        var names = check.Arrangement.Unplugged.Concat(check.Arrangement.Removed)
            .Concat(check.Arrangement.Jumpers.SelectMany(j => new[] { j.From.Part, j.To.Part }));
        if (check.Probe.Red is { } red)
        {
            names = names.Append(red.Part);
        }

        if (check.Probe.Black is { } black)
        {
            names = names.Append(black.Part);
        }

        // A load that is looked at or listened to needs no access; a joint, fuse, relay or clamped wire does.
        if (check.Probe is { About: { } about, Red: null } && !check.Subject.IsOfALoad() && check.Subject != CheckSubject.RelayClick)
        {
            names = names.Concat(Touched(circuit, about));
        }

        return names.Distinct(StringComparer.Ordinal).Select(circuit.Find).OfType<Part>();
    }

    private static IEnumerable<string> Touched(Circuit circuit, string about)
    {
        if (circuit.Wires.FirstOrDefault(w => w.Id == about) is not { } wire)
        {
            return [TerminalName.Parse(about.Split(' ')[0]).Part];
        }

        // A clamp goes round the wire at whichever end is easier to get at.
        return [TestPoints.ClampEnds(circuit, wire).MinBy(end => circuit.FindPlace(circuit.Find(end.Part)?.Notes.Place)?.OpenMinutes ?? 0).Part];
    }
}
