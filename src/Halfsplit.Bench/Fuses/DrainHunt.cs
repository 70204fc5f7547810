using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Bench.Fuses;

/// <summary>A fuse of the box, with what was measured across it.</summary>
/// <param name="Volts">Null where nothing was measured yet.</param>
public sealed record HuntFuse(string Name, FuseSpec Fuse, double? Volts = null)
{
    /// <summary>Reads <c>F12 10A mini = 0.4</c>: a name, the fuse, and the millivolts across it if they are known.</summary>
    public static Outcome<HuntFuse> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var sign = text.IndexOf('=', StringComparison.Ordinal);
        var named = (sign < 0 ? text : text[..sign]).Trim();
        var blank = named.IndexOf(' ', StringComparison.Ordinal);
        double? volts = sign < 0 ? null : TypedQuantity.Read(text[(sign + 1)..], Quantity.Volts, bare: 1e-3);
        return blank > 0 && (sign < 0 || volts >= 0)
            ? FuseSpec.Parse(named[blank..]).Then(spec => new HuntFuse(named[..blank], spec, volts))
            : Outcome.Wrong<HuntFuse>(new Message("bench-limit.hunt-fuse", text));
    }
}

/// <summary>A battery that goes flat, and the box that its current leaves through.</summary>
/// <param name="TotalAmps">Through the battery's cable, everything asleep; null where it is not measured yet.</param>
/// <param name="StepVolts">One count of the meter.</param>
public sealed record HuntQuestion(ImmutableArray<HuntFuse> Fuses, double? TotalAmps, double AllowedAmps, double StepVolts);

/// <summary>One fuse in the order of the hunt.</summary>
/// <param name="Reading">Null where nothing was measured yet.</param>
/// <param name="CanResolve">Its millivolts would show the excess.</param>
public sealed record HuntLine(HuntFuse Fuse, double FloorAmps, bool CanResolve, DrainReading? Reading);

/// <summary>The plan, and what is known so far.</summary>
/// <param name="ExcessAmps">What the hunt looks for; the allowance itself where no total is known.</param>
/// <param name="Lines">In the order in which to measure: those that resolve the excess first, the finest first.</param>
/// <param name="Unexplained">The total less what the fuses carry, at its least and most; null without a total and a reading.</param>
public sealed record HuntPlan(HuntQuestion Question, double ExcessAmps, ImmutableArray<HuntLine> Lines, Measure? Unexplained);

/// <summary>Finds the circuit that empties a battery without waking the modules.</summary>
public static class DrainHunt
{
    public static Outcome<HuntPlan> Of(HuntQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var limits = new InputLimits()
            .Within("total", question.TotalAmps, "total", Unit.Amp)
            .Within("allowed-amps", question.AllowedAmps, "allowed-amps", Unit.Amp)
            .Within("meter-step", question.StepVolts, "meter-step", Unit.Volt)
            .Unless(question.Fuses.Length > 0, "bench-limit.no-fuses")
            .Unless(question.Fuses.Select(f => f.Name).Distinct().Count() == question.Fuses.Length, "bench-limit.same-fuse");
        foreach (var fuse in question.Fuses)
        {
            limits.Within("fuse-drop", fuse.Volts, 0, Math.Min(BenchDefaults.Table.RangeOf("limit.fuse-drop").High, fuse.Fuse.MostAmps * fuse.Fuse.ColdOhms.Value), Unit.Volt);
        }

        return limits.AreKept ? Outcome.Of(Plan(question)) : Outcome.Wrong<HuntPlan>(limits.Problems);
    }

    private static HuntPlan Plan(HuntQuestion question)
    {
        var excess = question.TotalAmps is { } total ? Math.Max(0, total - question.AllowedAmps) : question.AllowedAmps;
        var lines = question.Fuses
            .Select(f => (Fuse: f, Floor: FuseDrain.FloorAmps(f.Fuse, question.StepVolts)))
            .Select(f => new HuntLine(
                f.Fuse, f.Floor, f.Floor <= excess, f.Fuse.Volts is { } volts ? FuseDrain.Of(f.Fuse.Fuse, volts, question.StepVolts).Result : null))
            .OrderByDescending(l => l.CanResolve).ThenBy(l => l.FloorAmps).ThenBy(l => l.Fuse.Name, StringComparer.Ordinal)
            .ToImmutableArray();
        return new HuntPlan(question, excess, lines, Unexplained(question.TotalAmps, lines));
    }

    private static Measure? Unexplained(double? total, ImmutableArray<HuntLine> lines)
    {
        var read = lines.Select(l => l.Reading?.Amps).OfType<Measure>().ToList();
        return total is { } amps && read.Count > 0
            ? new Measure(
                amps - read.Sum(r => r.Value), Unit.Amp,
                new(amps - read.Sum(r => r.Range!.Value.High), amps - read.Sum(r => r.Range!.Value.Low)))
            : null;
    }
}
