using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Networks;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Instruments;

/// <summary>Reads instruments off a settled car, and says how each reading moves with everything that may differ.</summary>
public sealed class InstrumentReader
{
    /// <summary>An in-line ammeter with its leads, in ohms; from memory.</summary>
    public const double InlineOhms = 0.03;

    /// <summary>Volts between or on the leads above which ohms would be nonsense and could harm the meter.</summary>
    private const double LiveVolts = 0.05;

    private readonly OperatingPoint _point;
    private readonly Meter _meter;
    private readonly NetworkSolver _solver;
    private readonly double[] _unit;
    private readonly double[] _leaks;
    private readonly double[][] _adjoint;

    public InstrumentReader(OperatingPoint point, Meter? meter = null)
    {
        ArgumentNullException.ThrowIfNull(point);
        _point = point;
        _meter = meter ?? Meter.Default;
        _solver = new NetworkSolver(point.Network.ShapeWith(point.Run.Attachments));
        _unit = new double[point.Network.NodeNames.Length];
        _leaks = Settler.Leaks(_unit.Length);
        _adjoint = [.. point.Run.Frames.Select(_ => new double[_unit.Length])];
        if (point.Run.Frames.Length == 1)
        {
            _solver.Factor(point.Run.Frames[0].Conductance, _leaks);
        }
    }

    /// <summary>True for instruments whose current changes the circuit.</summary>
    public static bool TakesPart(Instrument instrument) => instrument is Instrument.TestLamp or Instrument.AmpsInline;

    internal static Attachment Lay(CircuitNetwork network, Probe probe, Meter meter)
    {
        var nominal = network.Circuit.Battery.NominalVolts;
        var from = network.NodeOf(probe.Red!.Value);
        var to = network.NodeOf(probe.Black!.Value);
        return probe.Instrument == Instrument.TestLamp
            ? new Attachment(from, to, probe.LampOhms(meter, nominal), nominal)
            : new Attachment(from, to, InlineOhms);
    }

    /// <summary>What the instrument shows.</summary>
    public Prediction Read(Probe probe)
    {
        ArgumentNullException.ThrowIfNull(probe);
        if (!_point.IsSteady)
        {
            return new Prediction(0, 0, 0, Abstention.Chatter);
        }

        return probe.Instrument switch
        {
            Instrument.AmpsClamp => new Prediction(_point.WireAmps(probe.About!), 0, 0, Abstention.None),
            Instrument.AmpsInline => new Prediction(LaidAmps(), 0, 0, Abstention.None),
            Instrument.TestLamp => new Prediction(Between(probe), 0, Math.Abs(LaidAmps()), Abstention.None),
            Instrument.Ohms or Instrument.Continuity => Ohms(probe),
            Instrument.Duty => Duty(probe),
            _ => Volts(probe),
        };
    }

    /// <summary>
    /// How the reading moves: first per volt of the battery's open-circuit volts, then per unit of the natural logarithm
    /// of each branch's ohms. Same order as the network's branches.
    /// </summary>
    /// <param name="probe">Where the leads are.</param>
    /// <param name="slopes">Filled; length one more than the number of branches.</param>
    public void Slopes(Probe probe, Span<double> slopes)
    {
        ArgumentNullException.ThrowIfNull(probe);
        slopes.Clear();
        if (!_point.IsSteady || probe.Instrument is Instrument.Eye or Instrument.Ear)
        {
            return;
        }

        var branches = _point.Network.Branches;
        var isOhms = probe.Instrument is Instrument.Ohms or Instrument.Continuity;
        var own = Seed(probe);
        SolveAdjoint();
        for (var f = 0; f < _adjoint.Length; f++)
        {
            var frame = _point.Run.Frames[f];
            var lambda = _adjoint[f];
            for (var i = 0; i < branches.Length; i++)
            {
                var branch = branches[i];
                var gap = At(lambda, branch.From) - At(lambda, branch.To);
                var amps = isOhms
                    ? frame.Conductance[i] * gap
                    : (frame.Conductance[i] * (frame.At(branch.From) - frame.At(branch.To))) + frame.Source[i];
                slopes[i + 1] += frame.Weight * amps * gap;
                if (i == own)
                {
                    slopes[i + 1] -= frame.Weight * amps;
                }

                if (branch.Use == BranchUse.Source && frame.Source[i] != 0 && !isOhms)
                {
                    slopes[0] += frame.Weight * frame.Conductance[i] * gap;
                }
            }
        }

        if (probe.Instrument is Instrument.Volts or Instrument.VoltsLowImpedance)
        {
            var divider = Divider(probe, SourceOhms(probe));
            for (var i = 0; i < slopes.Length; i++)
            {
                slopes[i] *= divider;
            }
        }
    }

    private Prediction Volts(Probe probe)
    {
        SeedBetween(probe, 1);
        SolveAdjoint();
        var source = SourceOhms(probe);
        return new Prediction(Between(probe) * Divider(probe, source), source, 0, Abstention.None);
    }

    /// <summary>A duty needs pulses between the leads; without them, or with other waveforms, the meter cannot say.</summary>
    private Prediction Duty(Probe probe)
    {
        var red = _point.Network.NodeOf(probe.Red!.Value);
        var black = _point.Network.NodeOf(probe.Black!.Value);
        var half = _point.Network.Circuit.Battery.NominalVolts / 2;
        var high = 0.0;
        foreach (var frame in _point.Run.Frames)
        {
            high += frame.At(red) - frame.At(black) > half ? frame.Weight : 0;
        }

        return high is > 0 and < 1
            ? new Prediction(high, 0, 0, Abstention.None)
            : new Prediction(0, 0, 0, Abstention.Waveform);
    }

    private Prediction Ohms(Probe probe)
    {
        var open = Between(probe);
        if (Math.Abs(open) > LiveVolts || Math.Abs(_point.Volts(probe.Red!.Value)) > LiveVolts)
        {
            return new Prediction(0, 0, 0, Abstention.LiveCircuit);
        }

        SeedBetween(probe, 1);
        SolveAdjoint();
        var source = SourceOhms(probe);
        return new Prediction(
            source + _meter.LeadOhms + (open / Meter.OhmsTestAmps), source, 0, Abstention.None);
    }

    private double Between(Probe probe) => _point.Volts(probe.Red!.Value) - _point.Volts(probe.Black!.Value);

    /// <summary>Amps through the instrument, which is laid on last.</summary>
    private double LaidAmps() => _point.Run.LaidAmps(_point.Run.Attachments.Length - 1);

    private double Divider(Probe probe, double sourceOhms)
    {
        var input = probe.Instrument == Instrument.VoltsLowImpedance ? _meter.LowImpedanceOhms : _meter.InputOhms;
        return input / (input + sourceOhms + _meter.LeadOhms);
    }

    /// <summary>Sets the unit excitation of the reading; returns the branch whose own current is read, or −1.</summary>
    private int Seed(Probe probe)
    {
        if (probe.Instrument == Instrument.AmpsClamp)
        {
            var found = _point.Network.BranchesOf(probe.About!);
            if (found.Length == 0)
            {
                return -1;
            }

            var branch = _point.Network.Branches[found[0]];
            Array.Clear(_unit);
            Put(branch.From, _point.Run.Frames[0].Conductance[found[0]]);
            Put(branch.To, -_point.Run.Frames[0].Conductance[found[0]]);
            return found[0];
        }

        SeedBetween(probe, probe.Instrument == Instrument.AmpsInline ? 1 / InlineOhms : 1);
        return -1;
    }

    private void SeedBetween(Probe probe, double size)
    {
        Array.Clear(_unit);
        Put(_point.Network.NodeOf(probe.Red!.Value), size);
        Put(_point.Network.NodeOf(probe.Black!.Value), -size);
    }

    private void Put(int node, double amps)
    {
        if (node >= 0)
        {
            _unit[node] += amps;
        }
    }

    private void SolveAdjoint()
    {
        for (var f = 0; f < _adjoint.Length; f++)
        {
            if (_adjoint.Length > 1)
            {
                _solver.Factor(_point.Run.Frames[f].Conductance, _leaks);
            }

            _solver.Solve(_unit, _adjoint[f]);
        }
    }

    private double SourceOhms(Probe probe)
    {
        var red = _point.Network.NodeOf(probe.Red!.Value);
        var black = _point.Network.NodeOf(probe.Black!.Value);
        var ohms = 0.0;
        for (var f = 0; f < _adjoint.Length; f++)
        {
            ohms += _point.Run.Frames[f].Weight * (At(_adjoint[f], red) - At(_adjoint[f], black));
        }

        return Math.Max(0, ohms);
    }

    private static double At(double[] values, int node) => node < 0 ? 0 : values[node];
}
