using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Tests.Play;

/// <summary>
/// A car with hidden faults that answers checks as a person with a meter would: from the simulation alone, without the
/// engine's likelihoods. Repairs take faults away by the names they give, nothing else.
/// </summary>
public sealed class SimulatedCar(Circuit circuit, string load, params IEnumerable<Fault> faults)
{
    private readonly CircuitSimulator _simulator = new(NetworkCompiler.Compile(circuit));

    public List<Fault> Faults { get; } = [.. faults];

    /// <summary>Adds to every number: a meter that is off.</summary>
    public double Offset { get; set; }

    public LoadCondition Fares(string condition) =>
        _simulator.Simulate(new Arrangement(condition), Faults).Load(load).Condition;

    public ReadingValue Answer(Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        if (check.Subject == CheckSubject.Repair)
        {
            var target = check.Probe.About!.Replace(" socket", ".", StringComparison.Ordinal);
            Faults.RemoveAll(f => f.Part == target || (target.EndsWith('.') && f.Part.StartsWith(target, StringComparison.Ordinal))
                || (circuit.Find(target) is Lamp && f.Part.StartsWith(target + ".", StringComparison.Ordinal)));
            return Word("done");
        }

        if (check.Subject == CheckSubject.PutBack)
        {
            return Word("done");
        }

        var point = _simulator.Simulate(check.Arrangement, Faults);
        var about = check.Probe.About ?? "";
        return check.Subject switch
        {
            CheckSubject.Number => Number(check),
            CheckSubject.Buzzer => Word(Read(check).Value < 50 ? "beeps" : "no-beep"),
            CheckSubject.LampGlow => Glow(Math.Abs(Read(check).Value) / circuit.Battery.NominalVolts),
            CheckSubject.LoadWork or CheckSubject.WorkHot or CheckSubject.WorkAgain => Work(check, point.Load(about)),
            CheckSubject.RelayClick => Word(point.IsPulledIn(about) && !Has(about, "stuck", "welded") ? "clicks" : "silent"),
            CheckSubject.FuseLook => Word(point.IsBlown(about) || Has(about, "open") ? "blown" : "whole"),
            CheckSubject.PinFit => Word(JointFault(about) ? "corroded" : "tight"),
            CheckSubject.JointHeat => Word("not-sure"),
            CheckSubject.Wiggle => Word(JointFault(about) ? "jumps" : "steady"),
            CheckSubject.BenchRelay => Word(Faults.Any(f => f.Part == about && f.Mode != "contact-resistive") ? "fails" : "passes"),
            _ => Word("not-sure"),
        };
    }

    private ReadingValue Number(Check check)
    {
        var read = Read(check);
        if (read.Abstains != Abstention.None)
        {
            return Word("not-sure");
        }

        if (read.IsOverLimit(check.Probe.Instrument))
        {
            return new ReadingParse.OverLimit();
        }

        return DisplayedNumber.Of(Meter.Default, check.Probe.Instrument, read.Value + Offset);
    }

    private Prediction Read(Check check) => _simulator.Read(check.Arrangement, Faults, check.Probe);

    private static ReadingValue Work(Check check, LoadState state)
    {
        var group = state.Condition switch { LoadCondition.Works => 0, LoadCondition.Weak => 1, _ => 2 };
        return new ReadingParse.Word(check.Answers[group][0]);
    }

    private static ReadingValue Glow(double share) => Word(share > 0.75 ? "bright" : share > 0.15 ? "dim" : "dark");

    private bool Has(string part, params string[] modes) => Faults.Any(f => f.Part == part && modes.Contains(f.Mode));

    private bool JointFault(string part) => Faults.Any(f =>
        (f.Part == part || f.Part.StartsWith(part + ".", StringComparison.Ordinal)) && f.Mode is "open" or "resistive" or "loose");

    private static ReadingValue Word(string id) => new ReadingParse.Word(AnswerWord.Find(id)!);
}
