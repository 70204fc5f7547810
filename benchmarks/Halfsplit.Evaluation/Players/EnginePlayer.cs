using System.Collections.Concurrent;
using System.Globalization;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Evaluation.Play;

namespace Halfsplit.Evaluation.Players;

/// <summary>Follows the engine's advice to the letter.</summary>
/// <param name="looksAhead">False: where the engine has planned a check, takes the one that tells most per minute instead; all its other rules hold.</param>
public sealed class EnginePlayer(bool looksAhead = true) : IPlayer
{
    /// <summary>How many entries deep decisions are kept: deeper states hardly come twice.</summary>
    private const int KeptDepth = 4;

    private readonly ConcurrentDictionary<string, Check> _decided = new(StringComparer.Ordinal);

    public string Name => looksAhead ? "halfsplit" : "one-step";

    /// <summary>How many decisions were kept from earlier cars, and how many were asked for.</summary>
    public (long Kept, long Asked) Decisions => (_kept, _asked);

    private long _kept;
    private long _asked;

    public IEnumerable<Move> Play(Attempt attempt)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        var engine = new EngineSeat(attempt);
        while (true)
        {
            var key = engine.Entries <= KeptDepth ? $"{attempt.Place.Circuit.Title}|{attempt.Place.Complaint.Name}|{attempt.Place.Variant.Minutes}|{engine.State}" : null;
            Interlocked.Increment(ref _asked);
            if (key is not null && _decided.TryGetValue(key, out var known))
            {
                Interlocked.Increment(ref _kept);
                yield return new Move.Look(known);
                engine.Record(known, attempt.Answer);
                continue;
            }

            var step = engine.Investigation.Next();
            if (step.IsProven || step.Check is { Kind: CheckKind.PutBack })
            {
                yield return new Move.Close();
                yield break;
            }

            var check = !looksAhead && step.Plan is { Best.Check: not null } ? engine.MostPerMinute() ?? step.Check : step.Check;
            if (check is null)
            {
                yield break;
            }

            if (check.Kind != CheckKind.Repair)
            {
                if (key is not null)
                {
                    _decided[key] = check;
                }

                engine.Snapshot();
                yield return new Move.Look(check);
                engine.Record(check, attempt.Answer);
            }
            else
            {
                var finding = step.Finding ?? engine.Investigation.PresentFinding();
                if (finding is null)
                {
                    yield break;
                }

                yield return engine.Blame(finding);
                engine.RecordRepair(finding.Repair);
            }
        }
    }
}

/// <summary>A player's own investigation, kept in step with what was done at the car.</summary>
internal sealed class EngineSeat(Attempt attempt)
{
    /// <summary>Shares of the odds that a named group holds.</summary>
    private const double GroupShare = 0.95, WideShare = 0.99;

    private const double WorthStating = 0.005;

    /// <summary>After this many entries the odds are looked at, the first repair apart: early enough to be wrong.</summary>
    private const int SnapshotAt = 5;

    private readonly System.Text.StringBuilder _state = new();
    private bool _snapped;

    public Investigation Investigation { get; } = attempt.Place.Opened.Anew();

    public int Entries { get; private set; }

    /// <summary>Everything entered, in order.</summary>
    public string State => _state.ToString();

    public void Record(Check check, ReadingValue value)
    {
        Investigation.Record((Entries++).ToString(CultureInfo.InvariantCulture), check, value);
        _state.Append(check.Id).Append(" => ").Append(value).Append('\n');
    }

    public void RecordRepair(Repair repair)
    {
        Record(attempt.Place.CheckOf(repair), new ReadingParse.Word(AnswerWord.Done));
        foreach (var (check, value) in attempt.Proofs)
        {
            Record(check, value);
        }
    }

    /// <summary>The check that tells most per minute; null where none tells anything.</summary>
    public Check? MostPerMinute() => Investigation.RankedNow().OrderByDescending(r => Math.Round(r.Score, 9)).FirstOrDefault()?.Check;

    /// <summary>States the suspects' odds once, along the way.</summary>
    public void Snapshot()
    {
        if (!_snapped && Entries >= SnapshotAt)
        {
            _snapped = true;
            attempt.Suspects.AddRange(Stated());
        }
    }

    /// <summary>The repair, with what is claimed for it.</summary>
    public Move.Mend Blame(Finding finding)
    {
        var stated = Stated();
        if (attempt.Repairs.Count == 0)
        {
            attempt.Suspects.AddRange(stated);
        }

        return new Move.Mend(finding.Repair, new Claim(finding.Odds, [.. Group(GroupShare)], [.. Group(WideShare)], [.. stated]));
    }

    /// <summary>The fewest repairs that hold such a share of the odds.</summary>
    private IEnumerable<string> Group(double share)
    {
        var sum = 0.0;
        foreach (var group in Investigation.Suspects
            .GroupBy(s => s.Suspect.IsNone ? s.Suspect.Id : string.Join(" + ", s.Suspect.Modes.Select(m => attempt.Place.RepairOf(m).Id).Distinct()))
            .Select(g => (g.Key, Odds: g.Sum(s => s.Odds)))
            .OrderByDescending(g => Math.Round(g.Odds, 9)).ThenBy(g => g.Key, StringComparer.Ordinal))
        {
            yield return group.Key;
            sum += group.Odds;
            if (sum >= share)
            {
                yield break;
            }
        }
    }

    private List<Stated> Stated() => [.. Investigation.Suspects
        .Where(s => s.Odds >= WorthStating)
        .Select(s => new Stated(Math.Round(s.Odds, 4), IsIt(s)))];

    private bool IsIt(SuspectOdds suspect) => suspect.Suspect.IsNone
        ? attempt.Car.IsForeign
        : !attempt.Car.IsForeign && suspect.Suspect.Modes.Length == attempt.Car.Hidden.Length
            && attempt.Car.Hidden.All(h => suspect.Suspect.Modes.Any(m => m.Part == h.Part && m.Mode == h.Mode));
}
