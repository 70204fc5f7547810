using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>
/// What all readings of one car share without our knowing it: the battery's volts at rest and running, every part's
/// true resistance, a clamp's zero, the meter's gain, and where in its cell the severity lies.
/// </summary>
public sealed class Unknowns
{
    /// <summary>Spread of a battery's rest volts before the posts are read, in volts at 12 V; an assumption.</summary>
    private const double RestVoltsSpread = 0.35;

    private const double RunningVoltsSpread = 0.3;

    private readonly CircuitNetwork _network;
    private readonly double _scale;

    public Unknowns(CircuitNetwork network)
    {
        ArgumentNullException.ThrowIfNull(network);
        _network = network;
        _scale = network.Circuit.Battery.NominalVolts / 12;
    }

    /// <summary>Number of unknowns.</summary>
    public int Count => 2 + _network.Branches.Length + 3;

    /// <summary>Turns an instrument's slopes into slopes per standard deviation of each unknown.</summary>
    /// <param name="raw">First per volt of the battery, then per unit of the logarithm of each branch's ohms.</param>
    /// <param name="severity">The degree of what is wrong, as far as it is unknown.</param>
    /// <param name="beside">That of a second fault.</param>
    /// <param name="zero">How the number moves with a clamp's zero: see <see cref="Forecast.Zero"/>.</param>
    public double[] Scale(
        ReadOnlySpan<double> raw, double mean, Instrument instrument, Meter meter, Condition condition,
        SeverityCell? severity, SeverityCell? beside, double zero)
    {
        ArgumentNullException.ThrowIfNull(meter);
        ArgumentNullException.ThrowIfNull(condition);
        var slopes = new double[Count];
        var running = condition.AlternatorVolts is not null;
        slopes[running ? 1 : 0] = raw[0] * _scale * (running ? RunningVoltsSpread : RestVoltsSpread);
        for (var i = 0; i < _network.Branches.Length; i++)
        {
            slopes[2 + i] = raw[i + 1] * _network.Branches[i].Tolerance;
        }

        slopes[^3] = zero;
        slopes[^2] = mean * meter.GainSpread(instrument);
        if (beside is not null)
        {
            foreach (var (branch, spread) in beside.Branches)
            {
                // What is unknown of this branch is the degree of its fault. (Two contacts of one fault move each by itself then.)
                slopes[2 + branch] = raw[branch + 1] * spread;
            }
        }

        if (severity is not null)
        {
            foreach (var (branch, spread) in severity.Branches)
            {
                // The branch's healthy tolerance is swallowed by its fault.
                slopes[2 + branch] = 0;
                slopes[^1] += raw[branch + 1] * spread;
            }
        }

        return slopes;
    }
}
