using System.Collections.Immutable;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Diagnosis.Noticing;

/// <summary>How SAE J2012 classes what a module sees wrong with an output's circuit (from memory).</summary>
internal enum CodeClass { Open, Low, High }

/// <summary>
/// What a control module would have stored of an output's circuit: it compares the volts at its own terminal with those
/// of a sound circuit, while the output is off and while it drives. Which class a maker's program stores where the volts
/// allow two is not known; the other classes keep a share.
/// </summary>
/// <param name="circuit">The circuit.</param>
/// <param name="conditions">Those a car with the complaint can be in.</param>
/// <param name="healthy">The sound car.</param>
internal sealed class ModuleCodes(Circuit circuit, ImmutableArray<Condition> conditions, CarSeen healthy)
{
    /// <summary>Volts from sound ones by which a fault is seen; as in the check with a scan tool.</summary>
    private const double Differs = 2;

    /// <summary>Share of the nominal volts under which a terminal is low, and over which it is high; an assumption.</summary>
    private const double LowShare = 0.15, HighShare = 0.7;

    /// <summary>How often another class than the simulated one is stored; an assumption.</summary>
    private const double OtherClass = 0.3;

    /// <summary>Share of the healthy feed's volts under which a module stores that its supply is low; an assumption.</summary>
    private const double SupplyShare = 0.85;

    /// <summary>1 where some code of this output's circuit would be stored.</summary>
    public double Any(CarSeen car, string output) => Seen(car, output) is null ? 0 : 1;

    /// <summary>How likely a code of this class would be stored, given that one is: 0 where none is.</summary>
    public double Of(CarSeen car, string output, CodeClass wanted) =>
        Seen(car, output) is { } seen ? seen == wanted ? 1 : OtherClass : 0;

    /// <summary>1 where the module is awake on feed volts well under the healthy ones, with nobody cranking.</summary>
    public double SupplyLow(CarSeen car, string module)
    {
        var feeds = ((Module)circuit[module]).Feeds;
        var grounds = ((Module)circuit[module]).Grounds;
        foreach (var condition in conditions.Where(c => c.StarterAmps is null))
        {
            var (point, sound) = (car.In(condition.Name), healthy.In(condition.Name));
            if (!sound.IsAwake(module) || !point.IsAwake(module))
            {
                continue;
            }

            foreach (var feed in feeds)
            {
                double Across(Simulation.OperatingPoint at) =>
                    at.Volts(new(module, feed)) - (grounds.Length > 0 ? at.Volts(new(module, grounds[0])) : 0);
                if (Across(point) < SupplyShare * Across(sound))
                {
                    return 1;
                }
            }
        }

        return 0;
    }

    private CodeClass? Seen(CarSeen car, string output)
    {
        var name = TerminalName.Parse(output);
        var nominal = circuit.Battery.NominalVolts;
        CodeClass? seen = null;
        foreach (var condition in conditions)
        {
            var (point, sound) = (car.In(condition.Name), healthy.In(condition.Name));
            if (!sound.IsAwake(name.Part) || !point.IsAwake(name.Part))
            {
                continue;
            }

            var (volts, right) = (point.Volts(name), sound.Volts(name));
            if (Math.Abs(volts - right) <= Differs)
            {
                continue;
            }

            CodeClass found = volts < LowShare * nominal ? CodeClass.Low
                : volts > HighShare * nominal ? CodeClass.High
                : CodeClass.Open;
            if (!sound.IsDriving(name.Part, name.Name))
            {
                return found;
            }

            // While it drives, only what holds the terminal against it is seen: too much current, not too little.
            if (point.IsDriving(name.Part, name.Name))
            {
                seen ??= found;
            }
        }

        return seen;
    }
}
