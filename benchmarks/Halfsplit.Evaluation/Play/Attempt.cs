using System.Globalization;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Evaluation.Cars;
using Halfsplit.Simulation.Arrangements;

namespace Halfsplit.Evaluation.Play;

/// <summary>
/// One player at one car. Keeps the books, the same for all players: minutes from where the car stands, prices, the proof
/// after every repair, when to give up, what it takes to put the car back.
/// </summary>
public sealed class Attempt(Workplace place, TestCar car)
{
    /// <summary>Wrong repairs after which anybody hands over; an assumption, the same for all.</summary>
    public const int MostWrong = 5;

    /// <summary>Minutes after which anybody hands over; an assumption, the same for all.</summary>
    public const double MostMinutes = 300;

    private const int MostMoves = 90;

    private const int MostProofs = 24;

    /// <summary>Below these volts a proof is a drop, of which less is better.</summary>
    private const double DropVolts = 1;

    /// <summary>Share of the healthy volts below which a proof has failed for anybody; above it the engine's rule decides.</summary>
    private const double FailedShare = 0.75;

    private readonly List<(Check Check, ReadingValue Value)> _proofs = [];
    private readonly List<(Check Check, ReadingValue Value)> _log = [];
    private readonly List<(Repair Repair, bool Right)> _repairs = [];
    private readonly HashSet<string> _tried = new(StringComparer.Ordinal);

    public Workplace Place => place;

    /// <summary>For the clairvoyant, and for judging what was claimed.</summary>
    public TestCar Car => car;

    public Position Position { get; private set; } = Position.Start(place.Circuit);

    public double Minutes { get; private set; }

    /// <summary>Middle prices of all that was bought.</summary>
    public double Parts { get; private set; }

    public int Checks { get; private set; }

    /// <summary>The answer to the last check.</summary>
    public ReadingValue Answer { get; private set; } = new ReadingParse.Word(AnswerWord.NotSure);

    /// <summary>The proofs after the last repair.</summary>
    public IReadOnlyList<(Check Check, ReadingValue Value)> Proofs => _proofs;

    /// <summary>Everything done so far, repairs left out.</summary>
    public IReadOnlyList<(Check Check, ReadingValue Value)> Log => _log;

    /// <summary>Every repair tried, and whether it took away anything that was wrong.</summary>
    public IReadOnlyList<(Repair Repair, bool Right)> Repairs => _repairs;

    /// <summary>What the first repair was claimed on.</summary>
    public Claim? FirstClaim { get; private set; }

    /// <summary>Odds of every repair as claimed, and whether it cured.</summary>
    public List<Stated> Claims { get; } = [];

    /// <summary>Suspects' odds as stated along the way.</summary>
    public List<Stated> Suspects { get; } = [];

    public bool IsProven { get; private set; }

    /// <summary>The number last read; null where none was.</summary>
    public double? Number => Answer is ReadingParse.Number number ? number.Value : null;

    public bool Says(AnswerWord word) => Answer is ReadingParse.Word said && said.Answer == word;

    /// <summary>True once a repair was tried: nobody does the same again.</summary>
    public bool WasTried(Repair repair) => _tried.Contains(repair.Id);

    /// <summary>Minutes of a check from where the car stands now.</summary>
    public double MinutesOf(Check check) => Effort.MinutesOf(place.Circuit, place.Options, Position, check);

    /// <summary>Plays it to the end.</summary>
    public void Play(IPlayer player)
    {
        ArgumentNullException.ThrowIfNull(player);
        var moves = 0;
        foreach (var move in player.Play(this))
        {
            switch (move)
            {
                case Move.Look look:
                    Checks++;
                    Do(look.Check);
                    break;
                case Move.Mend mend:
                    Mend(mend);
                    break;
                default:
                    IsProven = true;
                    break;
            }

            if (IsProven || GivesUp || ++moves >= MostMoves)
            {
                break;
            }
        }

        PutBack();
    }

    private bool GivesUp => _repairs.Count(r => !r.Right) >= MostWrong || Minutes > MostMinutes;

    private ReadingValue Do(Check check)
    {
        Minutes += Effort.MinutesOf(place.Circuit, place.Options, Position, check);
        Position = Position.After(place.Circuit, check);
        Answer = car.Answer(check);
        _log.Add((check, Answer));
        return Answer;
    }

    private void Mend(Move.Mend mend)
    {
        var check = place.CheckOf(mend.Repair);
        Minutes += Effort.MinutesOf(place.Circuit, place.Options, Position, check) + mend.Repair.Minutes;
        Position = Position.After(place.Circuit, check);
        Parts += mend.Repair.Price.Middle;
        var right = car.Repair(mend.Repair);
        _repairs.Add((mend.Repair, right));
        _tried.Add(mend.Repair.Id);
        if (mend.Claim is { } claim)
        {
            FirstClaim ??= _repairs.Count == 1 ? claim : null;
            Claims.Add(new Stated(claim.Odds, right && car.IsCured));
        }

        IsProven = Prove(mend.Repair);
    }

    /// <summary>The proof that the engine asks for after such a repair, asked of everybody.</summary>
    private bool Prove(Repair repair)
    {
        _proofs.Clear();
        var proving = place.Proving;
        // A repair of something that could not cause the complaint is proven like any other.
        var known = place.Prior.Any(p => p.Repair.Id == repair.Id) ? repair : place.Prior[0].Repair;
        var entries = 1;
        proving.Record("0", place.CheckOf(known), new ReadingParse.Word(AnswerWord.Done));
        var proven = false;
        for (var asked = 0; asked < MostProofs; asked++)
        {
            var step = proving.Next();
            // All proofs passed: what is left is to put the car back, which Play counts for everybody.
            proven = step.IsProven || step.Check is { Kind: CheckKind.PutBack };
            if (step.Check is not { Kind: CheckKind.Proof } proof)
            {
                break;
            }

            var value = Do(proof);
            _proofs.Add((proof, value));
            if (!MayPass(proof, value) && asked > 0)
            {
                // It works, and yet the reading says no: anybody reads once more.
                _proofs[^1] = (proof, value = Do(proof));
            }

            if (!MayPass(proof, value))
            {
                break;
            }

            proving.Record((entries++).ToString(CultureInfo.InvariantCulture), proof, value);
        }

        for (var i = 0; i < entries; i++)
        {
            proving.Withdraw(i.ToString(CultureInfo.InvariantCulture));
        }

        return proven;
    }

    private bool MayPass(Check proof, ReadingValue value) => (value, place.Healthy(proof)) switch
    {
        (ReadingParse.Word { Answer: var said }, ReadingParse.Word { Answer: var healthy }) =>
            said == AnswerWord.NotSure || (proof.GroupOf(said) is >= 0 and var group && group <= proof.GroupOf(healthy)),
        (ReadingParse.Number said, ReadingParse.Number healthy) => Math.Abs(healthy.Value) < DropVolts
            || Math.Abs(said.Value) >= FailedShare * Math.Abs(healthy.Value),
        _ => false,
    };

    /// <summary>Jumpers out, everything plugged in, key off, what was opened closed.</summary>
    private void PutBack()
    {
        Minutes += Diagnosis.Planning.PutBack.MinutesOf(place.Circuit, Position);
        Minutes = Math.Round(Minutes, 2);
    }
}

/// <summary>A way to go about it.</summary>
public interface IPlayer
{
    string Name { get; }

    /// <summary>The moves in their order; ending means handing over.</summary>
    IEnumerable<Move> Play(Attempt attempt);
}
