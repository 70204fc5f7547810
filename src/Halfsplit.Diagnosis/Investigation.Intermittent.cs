using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Simulation.Arrangements;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>How many joints are moved by hand before waiting for the fault to come back.</summary>
    private const int MostMoved = 6;

    /// <summary>How often the person is sent to see whether the fault has come back.</summary>
    private const int MostWaits = 3;

    /// <summary>Odds of what sits at a joint, below which moving its harness is not worth the while.</summary>
    private const double WorthMoving = 0.01;

    /// <summary>Odds from which what jumped is mended and no other joint moved.</summary>
    private const double JumpOdds = 0.6;

    /// <summary>The load works at the moment although it was said not to: the fault comes and goes.</summary>
    public bool WorksNow => Assess().IsFaultAway;

    private (Assessment Of, double Odds)? _flickering;

    /// <summary>Odds that the fault comes and goes from one reading to the next: what was read good may be bad at the next look.</summary>
    public double FlickeringOdds
    {
        get
        {
            var now = Assess();
            if (_flickering is not { } known || !ReferenceEquals(known.Of, now))
            {
                _flickering = known = (now, now.Posterior.FlickeringOdds(_forecaster, now.Observations));
            }

            return known.Odds;
        }
    }

    /// <summary>The readings are better explained by a fault that comes and goes than by one that stays.</summary>
    public bool SeemsToComeAndGo => !WorksNow && FlickeringOdds > ComesAndGoes.SaidFrom;

    /// <summary>
    /// While the load works every reading is that of a healthy car. What can be done is to move the harness at the likeliest
    /// joints, then to wait until it fails.
    /// </summary>
    private NextStep? IntermittentStep(Assessment now)
    {
        if (!now.IsFaultAway || RankClasses(now)[0] is { Repair: not null, Odds: > JumpOdds })
        {
            return null;
        }

        var moved = now.Observations.Count(o => o.Check.Subject == CheckSubject.Wiggle)
            + now.SkippedChecks.Count(id => id.StartsWith("wiggle ", StringComparison.Ordinal));
        if (moved < MostMoved && !now.Observations.Any(o => HasJumped(o) && OddsAt(now, o.Check.Probe.About!) > JumpOdds) && JointToMove(now) is { } joint)
        {
            return Step(now, joint, new Message("reason.move-harness"), null, []);
        }

        if (now.Observations.Any(HasJumped))
        {
            // What sits at the joint that jumped can be looked at and mended as anything else.
            return null;
        }

        var reproduce = CheckCatalog.Reproduce(Circuit, Complaint);
        return now.Observations.Count(o => o.Check.Id == reproduce.Id) <= MostWaits
            && !now.SkippedChecks.Contains(reproduce.Id)
            ? Step(now, reproduce, new Message("reason.wait-for-it"), null, [])
            : Outside(now, new Message("reason.works-now"));
    }

    /// <summary>The harness was moved there and it failed, or the reading jumped.</summary>
    private static bool HasJumped(Observation observation) => observation.Check.Subject == CheckSubject.Wiggle
        && observation.Value is Readings.ReadingParse.Word { Answer: var word } && word == Readings.AnswerWord.Jumps;

    private Check? JointToMove(Assessment now) => OfferedNow(now)
        .Where(c => c.Subject == CheckSubject.Wiggle && !now.SkippedChecks.Contains(c.Id) && !IsDone(now, c))
        .Select(c => (Check: c, Odds: OddsAt(now, c.Probe.About!), Minutes: Effort.WeighedMinutesOf(Circuit, Options, now.Position, c)))
        .Where(c => c.Odds >= WorthMoving)
        .OrderByDescending(c => Math.Round(c.Odds / c.Minutes, 9))
        .ThenBy(c => c.Check.Id, StringComparer.Ordinal)
        .Select(c => c.Check)
        .FirstOrDefault();

    /// <summary>Odds of the joints of one part and of the wires that end at it.</summary>
    private static double OddsAt(Assessment now, string part)
    {
        bool IsAt(string name) => name == part || name.StartsWith(part + ".", StringComparison.Ordinal)
            || name.Split('~').Any(end => TerminalName.Parse(end).Part == part);
        return now.Suspects.Where(s => s.Suspect.Modes.Any(m => IsAt(m.Part))).Sum(s => s.Odds);
    }

    /// <summary>Every check that can be offered now, whether or not it was done.</summary>
    private ImmutableArray<Check> OfferedNow(Assessment now)
    {
        if (_offered.IsDefault || !_offeredWithout.SetEquals(now.GivenUp))
        {
            _offered = CheckCatalog.Generate(Network, Complaint, Options, now.GivenUp);
            _offeredWithout = now.GivenUp;
        }

        return _offered;
    }
}
