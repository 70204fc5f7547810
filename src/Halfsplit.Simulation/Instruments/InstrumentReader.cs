using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Networks;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Instruments;

/// <summary>Reads instruments off a settled car, and says how each reading moves with everything that may differ.</summary>
public sealed partial class InstrumentReader
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
    private readonly double[][] _conductance;

    public InstrumentReader(OperatingPoint point, Meter? meter = null)
    {
        ArgumentNullException.ThrowIfNull(point);
        _point = point;
        _meter = meter ?? Meter.Default;
        _solver = new NetworkSolver(point.Network.ShapeWith(point.Run.Attachments));
        _unit = new double[point.Network.NodeNames.Length];
        _leaks = Settler.Leaks(_unit.Length);
        _adjoint = [.. point.Run.Frames.Select(_ => new double[_unit.Length])];
        _conductance = [.. point.Run.Frames.Select(f => SmallChanges(point.Run, f))];
        if (point.Run.Frames.Length == 1)
        {
            _solver.Factor(_conductance[0], _leaks);
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

        if (IsOnBus(probe.Red) || IsOnBus(probe.Black))
        {
            return new Prediction(0, 0, 0, Abstention.Waveform);
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

    /// <summary>Each picture of a pulse loads the meter by itself; the display shows their mean.</summary>
    private Prediction Volts(Probe probe)
    {
        SeedBetween(probe, 1);
        SolveAdjoint();
        var volts = 0.0;
        var source = 0.0;
        for (var f = 0; f < _adjoint.Length; f++)
        {
            var frame = _point.Run.Frames[f];
            var ohms = SourceOhms(probe, f);
            volts += frame.Weight * Between(probe, frame) * Divider(probe, ohms);
            source += frame.Weight * ohms;
        }

        return new Prediction(volts, source, 0, Abstention.None);
    }

    /// <summary>Messages run on a bus whenever a module is awake; asleep or unplugged it is a wire like others.</summary>
    private bool IsOnBus(TerminalName? terminal) => terminal is { } touched && _point.Network.IsBus(touched)
        && _point.Network.Circuit.Parts.OfType<Module>().Any(m => m.Buses.Length > 0 && _point.IsAwake(m.Id));

    /// <summary>A duty needs pulses between the leads; without them, or with other waveforms, the meter cannot say.</summary>
    private Prediction Duty(Probe probe)
    {
        var half = _point.Network.Circuit.Battery.NominalVolts / 2;
        var high = 0.0;
        foreach (var frame in _point.Run.Frames)
        {
            high += Between(probe, frame) > half ? frame.Weight : 0;
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

    private double Between(Probe probe, Frame frame) =>
        frame.At(_point.Network.NodeOf(probe.Red!.Value)) - frame.At(_point.Network.NodeOf(probe.Black!.Value));

    /// <summary>Amps through the instrument, which is laid on last.</summary>
    private double LaidAmps() => _point.Run.LaidAmps(_point.Run.Attachments.Length - 1);

    private double Divider(Probe probe, double sourceOhms)
    {
        var input = InputOhms(probe);
        return input / (input + sourceOhms + _meter.LeadOhms);
    }

    private double InputOhms(Probe probe) =>
        probe.Instrument == Instrument.VoltsLowImpedance ? _meter.LowImpedanceOhms : _meter.InputOhms;

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
                _solver.Factor(_conductance[f], _leaks);
            }

            _solver.Solve(_unit, _adjoint[f]);
        }
    }

    /// <summary>Thevenin ohms between the leads: the mean over the pictures.</summary>
    private double SourceOhms(Probe probe)
    {
        var ohms = 0.0;
        for (var f = 0; f < _adjoint.Length; f++)
        {
            ohms += _point.Run.Frames[f].Weight * SourceOhms(probe, f);
        }

        return ohms;
    }

    private double SourceOhms(Probe probe, int frame)
    {
        var red = _point.Network.NodeOf(probe.Red!.Value);
        var black = _point.Network.NodeOf(probe.Black!.Value);
        return Math.Max(0, At(_adjoint[frame], red) - At(_adjoint[frame], black));
    }

    private static double At(double[] values, int node) => node < 0 ? 0 : values[node];
}
