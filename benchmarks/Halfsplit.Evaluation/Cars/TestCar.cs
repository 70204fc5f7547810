using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Jobs.Practice;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Evaluation.Cars;

/// <summary>One simulated car, as a player meets it: through checks and repairs and nothing else.</summary>
public sealed class TestCar(PracticeCar car, SlippingHand hand, ForeignJoint? foreign)
{
    /// <summary>What is wrong, by the names of the sheet. For the referee and the clairvoyant.</summary>
    public ImmutableArray<Fault> Hidden { get; } =
        [.. car.AllHidden.Select(f => foreign is null ? f : f with { Part = foreign.OnSheet(f.Part) })];

    /// <summary>True if the sheet has no name of its own for what is wrong.</summary>
    public bool IsForeign => car.AllHidden.Any(f => foreign is not null && foreign.Pieces.Contains(f.Part));

    public int FaultsLeft => car.Left.Length;

    public bool IsCured => car.IsCured;

    public int Slipped => hand.Slipped;

    /// <summary>What the person writes down.</summary>
    public ReadingValue Answer(Check check) =>
        hand.Take(check, c => car.Answer(foreign is null ? c : foreign.OnCar(c)));

    /// <summary>Carries a repair out; true if it took away something that was wrong.</summary>
    public bool Repair(Repair repair)
    {
        var before = car.Left.Length;
        car.Repair(foreign is null ? repair : foreign.OnCar(repair));
        return car.Left.Length < before;
    }
}
