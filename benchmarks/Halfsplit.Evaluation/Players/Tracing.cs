using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Evaluation.Play;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Evaluation.Players;

/// <summary>Steps of tracing a circuit with a meter that the orders share; each leaves what it found in a field.</summary>
internal sealed class Tracing(Attempt attempt)
{
    private static readonly TerminalName Body = new(Metal.Body);

    private readonly Workplace _place = attempt.Place;

    public LoadWiring Wiring => _place.Wiring;

    public Arrangement Commanded { get; } = new(attempt.Place.Complaint.Condition);

    public Arrangement Rest { get; } = new(CheckCatalog.RestCondition(attempt.Place.Circuit));

    /// <summary>Branches between the last good point and the first bad one; empty where nothing was found.</summary>
    public ImmutableArray<int> Piece { get; private set; } = [];

    /// <summary>What the last volts check read, its sign left out; null where it could not be done.</summary>
    public double? Read { get; private set; }

    public double Nominal => _place.Circuit.Battery.NominalVolts;

    public bool IsLive => Read >= LoadWiring.LiveShare * Nominal;

    /// <summary>Reads volts if that can be done.</summary>
    public IEnumerable<Move> Volts(Arrangement arrangement, TerminalName red, TerminalName? black = null)
    {
        Read = null;
        if (_place.Volts(arrangement, red, black ?? Body) is not { } check)
        {
            yield break;
        }

        yield return new Move.Look(check);
        Read = attempt.Number is { } number ? Math.Abs(number) : null;
    }

    /// <summary>Reads volts to the body in a condition one can hold and in which they should be there.</summary>
    public IEnumerable<Move> HeldVolts(Arrangement arrangement, TerminalName red)
    {
        var held = arrangement.In(Wiring.HeldFor(red, arrangement.Condition));
        return Volts(_place.Volts(held, red, Body) is null ? arrangement : held, red);
    }

    /// <summary>Does a check if it is on offer; <see cref="Attempt.Answer"/> has the answer, or "not sure".</summary>
    public IEnumerable<Move> Look(Check check)
    {
        WasDone = _place.Find(check) is not null;
        if (WasDone)
        {
            yield return new Move.Look(_place.Find(check)!);
        }
    }

    /// <summary>The last <see cref="Look"/> could be done.</summary>
    public bool WasDone { get; private set; }

    /// <summary>Points of a way that a lead can touch, in its order.</summary>
    public List<(int Index, TerminalName Terminal)> Points(CurrentPath path, Arrangement arrangement)
    {
        var touchable = TestPoints.Touchable(_place.Simulator.Network, arrangement, _ => true)
            .ToDictionary(p => p.Node, p => p.Terminal);
        return [.. path.Nodes.Select((node, i) => (i, node)).Where(p => touchable.ContainsKey(p.node))
            .Select(p => (p.i, touchable[p.node]))];
    }

    /// <summary>Walks a feed upward until volts are there; what is wrong lies before that point.</summary>
    public IEnumerable<Move> WalkUp(CurrentPath path, Arrangement arrangement)
    {
        Piece = [];
        var dead = 0;
        foreach (var (index, terminal) in Points(path, arrangement))
        {
            foreach (var move in HeldVolts(arrangement, terminal))
            {
                yield return move;
            }

            if (Read is null)
            {
                continue;
            }

            if (IsLive)
            {
                Piece = path.Branches[dead..index];
                yield break;
            }

            dead = index;
        }

        Piece = path.Branches[dead..];
    }

    /// <summary>Walks a return downward while volts still stand there; what is open lies after the last such point.</summary>
    public IEnumerable<Move> WalkDown(CurrentPath path, Arrangement arrangement)
    {
        Piece = [];
        var high = 0;
        foreach (var (index, terminal) in Points(path, arrangement))
        {
            foreach (var move in Volts(arrangement, terminal))
            {
                yield return move;
            }

            if (Read is null)
            {
                continue;
            }

            if (Read < 0.25 * Nominal)
            {
                Piece = path.Branches[high..index];
                yield break;
            }

            high = index;
        }

        Piece = path.Branches[high..];
    }

    /// <summary>
    /// Finds by halving where a way loses its volts under load: drops from the battery's post, toward the half that lost
    /// them; of the points near the middle the one that is quickest to get at.
    /// </summary>
    /// <param name="good">Nodes known to be good, from which on no loss is looked for.</param>
    /// <param name="known">The whole drop, where it was just read.</param>
    public IEnumerable<Move> Halve(
        CurrentPath path, Arrangement arrangement, bool isFeed, IReadOnlySet<int> good, double? known = null)
    {
        Piece = [];
        var points = Points(path, arrangement);
        points.RemoveAll(p => DropCheck(arrangement, p.Terminal, isFeed) is null && p.Index < path.Nodes.Length - 1);
        if (points.Count == 0)
        {
            Piece = path.Branches;
            yield break;
        }

        if (known is null)
        {
            yield return new Move.Look(DropCheck(arrangement, points[0].Terminal, isFeed) ?? CheckCatalog.ReadPosts(_place.Circuit));
            known = attempt.Number;
        }

        if (known is not { } whole || Math.Abs(whole) < 0.2)
        {
            // Nothing lost up to here: what is left lies between this point and the load.
            Piece = path.Branches[..points[0].Index];
            yield break;
        }

        var near = 0;
        var far = points.FindIndex(p => good.Contains(path.Nodes[p.Index]));
        far = far > 0 ? far : points.Count - 1;
        while (far - near > 1)
        {
            var from = near + 1 + ((far - near - 1) / 4);
            var to = far - 1 - ((far - near - 1) / 4);
            var middle = Enumerable.Range(from, Math.Max(1, to - from + 1))
                .MinBy(i => (attempt.MinutesOf(DropCheck(arrangement, points[i].Terminal, isFeed)!), Math.Abs((2 * i) - near - far)));
            yield return new Move.Look(DropCheck(arrangement, points[middle].Terminal, isFeed)!);
            if (attempt.Number is not { } drop)
            {
                points.RemoveAt(middle);
                far--;
                continue;
            }

            if (Math.Abs(drop) > 0.5 * Math.Abs(whole))
            {
                near = middle;
            }
            else
            {
                far = middle;
            }
        }

        Piece = path.Branches[points[near].Index..points[far].Index];
    }

    /// <summary>Mends what lies on the piece: what looks bad first, then by how often such things fail.</summary>
    public IEnumerable<Move> MendPiece(ImmutableArray<int> piece, bool looks)
    {
        var repairs = _place.RepairsOn(piece).Where(r => !attempt.WasTried(r) && !WasFoundGood(r.Target)).ToList();
        if (looks && repairs.Count > 1)
        {
            var network = _place.Simulator.Network;
            foreach (var joint in piece.Select(b => network.Branches[b])
                .Where(b => b.Use is BranchUse.Cavity or BranchUse.GroundPoint).DistinctBy(b => b.Owner))
            {
                foreach (var move in Look(Check.Create(
                    CheckKind.Look, CheckSubject.PinFit, Rest, new Probe(Instrument.Eye, null, null, joint.Owner))))
                {
                    yield return move;
                }

                if (WasDone && !attempt.Says(AnswerWord.Tight) && !attempt.Says(AnswerWord.NotSure))
                {
                    // Loose is the plug, anything else its contact.
                    var first = attempt.Says(AnswerWord.Loose) ? joint.Owner : joint.Target;
                    repairs = [.. repairs.OrderBy(r => r.Target == first ? 0 : r.Target == joint.Owner || r.Target == joint.Target ? 1 : 2)];
                    break;
                }
            }
        }

        foreach (var repair in repairs)
        {
            yield return new Move.Mend(repair);
        }
    }

    /// <summary>The repair that replaces a part, if it is one that could help and was not tried yet.</summary>
    public IEnumerable<Move> Replace(string part)
    {
        if (_place.Prior.Select(p => p.Repair).FirstOrDefault(r => r.Target == part) is { } repair && !attempt.WasTried(repair))
        {
            yield return new Move.Mend(repair);
        }
    }

    public static Check LookAt(CheckSubject subject, Arrangement arrangement, string about) => Check.Create(
        subject == CheckSubject.BenchRelay ? CheckKind.Bench : subject == CheckSubject.RelayClick ? CheckKind.Listen : CheckKind.Look,
        subject, arrangement,
        new Probe(subject == CheckSubject.RelayClick ? Instrument.Ear : Instrument.Eye, null, null, about));

    /// <summary>A fuse that looked whole and a relay that passed on the bench are believed.</summary>
    private bool WasFoundGood(string part) => attempt.Log.Any(e => e.Check.Probe.About == part
        && e.Value is ReadingParse.Word { Answer: var word } && (word == AnswerWord.Whole || word == AnswerWord.Passes));

    private Check? DropCheck(Arrangement arrangement, TerminalName point, bool isFeed)
    {
        var battery = _place.Circuit.Battery.Id;
        return isFeed
            ? _place.Volts(arrangement, new(battery, "pos"), point)
            : _place.Volts(arrangement, point, new(battery, "neg"));
    }
}
