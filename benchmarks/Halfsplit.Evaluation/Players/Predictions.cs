using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Evaluation.Play;
using Halfsplit.Jobs.Practice;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Evaluation.Players;

/// <summary>What each fault of the sheet would show at each check, without noise: a table as a book could print it.</summary>
internal sealed class Predictions
{
    /// <summary>Degrees of one way to fail that the table has at most.</summary>
    private const int MostDegrees = 4;

    private Predictions(ImmutableArray<(string Suspect, string Repair)> cars, ImmutableArray<Check> checks, ReadingValue[][] answers)
    {
        Cars = cars;
        Checks = checks;
        Answers = answers;
        var numbers = cars.Select(c => c.Suspect).Distinct().Select((suspect, i) => (suspect, i)).ToDictionary(s => s.suspect, s => s.i, StringComparer.Ordinal);
        int[] suspects = [.. cars.Select(c => numbers[c.Suspect])];
        Heaps = [.. answers.Select(a => new AnswerHeaps(a, suspects))];
    }

    /// <summary>Each car's suspect and the repair it needs.</summary>
    public ImmutableArray<(string Suspect, string Repair)> Cars { get; }

    public ImmutableArray<Check> Checks { get; }

    /// <summary>Answer of car c to check k at [k][c].</summary>
    public ReadingValue[][] Answers { get; }

    /// <summary>The same, sorted, of check k at [k].</summary>
    public ImmutableArray<AnswerHeaps> Heaps { get; }

    public static Predictions Of(Workplace place)
    {
        // Simulators are not shared between threads; the table is.
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(place.Circuit), place.Options.MeterInUse);
        var faults = FaultCatalog.For(simulator)
            .SelectMany(mode => Thin([.. mode.Faults().Where(f => HiddenFault.Shows(simulator, place.Complaint, [f]))])
                .Select(fault => (Mode: mode, Fault: fault)))
            .ToList();
        ImmutableArray<Check> checks = [.. place.Offered.Values
            .Where(c => c.Arrangement.Jumpers.Length == 0 && c.Probe.Instrument != Instrument.AmpsInline
                && !c.Subject.Equals(CheckSubject.Wiggle) && c.Kind != CheckKind.Swap
                && Access.PartsOf(place.Circuit, c).All(p => p.Notes.Probe))
            .OrderBy(c => c.Id, StringComparer.Ordinal)];
        var answers = new ReadingValue[checks.Length][];
        for (var k = 0; k < checks.Length; k++)
        {
            answers[k] = new ReadingValue[faults.Count];
        }

        for (var c = 0; c < faults.Count; c++)
        {
            // One car after the other: a simulator keeps what it has settled of the last few.
            var car = PracticeCar.Of(simulator, place.Complaint, place.Options.MeterInUse, [faults[c].Fault], null);
            foreach (var k in Enumerable.Range(0, checks.Length).OrderBy(k => checks[k].Arrangement.In("").Key, StringComparer.Ordinal))
            {
                answers[k][c] = car.Answer(checks[k]);
            }
        }

        return new Predictions(
            [.. faults.Select(f => (f.Mode.Id, place.RepairOf(f.Mode).Id))], checks, answers);
    }

    private static IEnumerable<Fault> Thin(List<Fault> faults)
    {
        var step = Math.Max(1, (faults.Count + MostDegrees - 1) / MostDegrees);
        return faults.Where((_, i) => i % step == 0 || i == faults.Count - 1);
    }
}
