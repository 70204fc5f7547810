using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Devices;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Instruments;

public sealed partial class InstrumentReader
{
    /// <summary>
    /// How the reading moves: first per volt of the battery's open-circuit volts, then per unit of the natural logarithm
    /// of each branch's ohms in its present state, filaments following their volts. Same order as the network's
    /// branches. A branch with a source counts by its size: a turning motor or a limiting output with ohms higher by a
    /// hundredth takes a hundredth less current at the same volts.
    /// All zero for what is not a number, for a duty, and while the circuit chatters.
    /// </summary>
    /// <param name="probe">Where the leads are.</param>
    /// <param name="slopes">Filled; length one more than the number of branches.</param>
    public void Slopes(Probe probe, Span<double> slopes)
    {
        ArgumentNullException.ThrowIfNull(probe);
        slopes.Clear();
        if (!_point.IsSteady || probe.Instrument is Instrument.Eye or Instrument.Ear or Instrument.Duty)
        {
            return;
        }

        var own = Seed(probe);
        SolveAdjoint();
        for (var f = 0; f < _adjoint.Length; f++)
        {
            var (perVolt, perOhm) = Shares(probe, f);
            Add(slopes, f, own, perVolt, perOhm);
        }
    }

    /// <summary>How the reading moves with the volts between the leads, unloaded, and with the ohms between them.</summary>
    private (double PerVolt, double PerOhm) Shares(Probe probe, int frame)
    {
        switch (probe.Instrument)
        {
            case Instrument.Ohms or Instrument.Continuity:
                return (1 / Meter.OhmsTestAmps, 1);
            case Instrument.Volts or Instrument.VoltsLowImpedance:
                var ohms = SourceOhms(probe, frame);
                var divider = Divider(probe, ohms);
                var volts = Between(probe, _point.Run.Frames[frame]);
                return (divider, -volts * divider / (InputOhms(probe) + ohms + _meter.LeadOhms));
            default:
                return (1, 0);
        }
    }

    private void Add(Span<double> slopes, int frameIndex, int own, double perVolt, double perOhm)
    {
        var frame = _point.Run.Frames[frameIndex];
        var lambda = _adjoint[frameIndex];
        var conductance = _conductance[frameIndex];
        var branches = _point.Network.Branches;
        for (var i = 0; i < branches.Length; i++)
        {
            var branch = branches[i];
            var gap = At(lambda, branch.From) - At(lambda, branch.To);
            var amps = (frame.Conductance[i] * (frame.At(branch.From) - frame.At(branch.To))) + frame.Source[i];
            var moved = (perVolt * amps * gap) + (perOhm * conductance[i] * gap * gap);
            slopes[i + 1] += frame.Weight * (i == own ? moved - amps : moved);
            if (branch.Use == BranchUse.Source && frame.Source[i] != 0)
            {
                slopes[0] += frame.Weight * perVolt * frame.Conductance[i] * gap;
            }
        }
    }

    /// <summary>
    /// What each branch answers to a small change of its volts with: its conductance, but a filament, whose ohms rise
    /// with its volts, answers with less.
    /// </summary>
    private static double[] SmallChanges(Run run, Frame frame)
    {
        double[]? changed = null;
        void Shrink(int branch, int from, int to, double share)
        {
            // A pulsed filament keeps its heat, and so its ohms, through the pause, where it has next to no volts.
            if (share < 1 && Math.Abs(frame.At(from) - frame.At(to)) > 0.5 * Math.Abs(run.Volts(from) - run.Volts(to)))
            {
                changed ??= [.. frame.Conductance];
                changed[branch] *= share;
            }
        }

        var branches = run.Network.Branches;
        foreach (var device in run.Network.Devices)
        {
            if (device is LampDevice lamp)
            {
                Shrink(lamp.Branch, branches[lamp.Branch].From, branches[lamp.Branch].To, lamp.SmallChangeShare(run));
            }
        }

        for (var i = 0; i < run.Attachments.Length; i++)
        {
            var laid = run.Attachments[i];
            if (laid.LampVolts > 0)
            {
                var volts = run.Volts(laid.From) - run.Volts(laid.To);
                Shrink(branches.Length + i, laid.From, laid.To, FilamentLaw.SmallChangeShare(laid.LampVolts, volts));
            }
        }

        return changed ?? frame.Conductance;
    }
}
