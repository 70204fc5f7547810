using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>What a healthy car shows against the body at the cavities of a part that is off, with the spread that cars and meters have.</summary>
internal sealed class PinForecaster
{
    /// <summary>The least spread of volts; less is lost in ghosts and ground drops.</summary>
    private static readonly double LeastVolts = PinDefaults.Of("pin.spread-volts");

    /// <summary>The least spread of ohms, in decades: leads and tolerances.</summary>
    private static readonly double LeastDecades = PinDefaults.Of("pin.spread-decades");

    /// <summary>Odds of OL from which a cavity counts as open.</summary>
    private static readonly double Open = PinDefaults.Of("pin.open");

    private static readonly TerminalName Body = new(Metal.Body);

    private readonly Forecaster _forecaster;
    private readonly Arrangement _off;

    /// <param name="circuit">The circuit.</param>
    /// <param name="part">A relay, which is pulled, or a connector, which is unplugged.</param>
    public PinForecaster(Circuit circuit, Part part)
    {
        var load = circuit.Parts.OfType<Load>().FirstOrDefault()?.Id ?? "";
        _forecaster = new Forecaster(new CircuitSimulator(NetworkCompiler.Compile(circuit)), load);
        Rest = CheckCatalog.RestCondition(circuit);
        var arrangement = new Arrangement(Rest);
        _off = part is Connector ? arrangement.Unplug(part.Id) : arrangement.Remove(part.Id);
    }

    public string Rest { get; }

    public PinForecast Volts(TerminalName terminal, string condition)
    {
        var forecast = Of(terminal, Instrument.Volts, condition, out _);
        return new PinForecast(
            PinSetting.Volts, condition, false,
            forecast.IsBroad ? PinExpectation.Anything : PinExpectation.Volts(forecast.Mean, Math.Max(forecast.Spread, LeastVolts)));
    }

    public PinForecast Ohms(TerminalName terminal)
    {
        var forecast = Of(terminal, Instrument.Ohms, Rest, out var isLive);
        return new PinForecast(PinSetting.Ohms, null, isLive, forecast switch
        {
            { IsBroad: true } => PinExpectation.Anything,
            { OverLimit: var odds } when odds > Open => PinExpectation.Open,
            _ => Decades(forecast.Mean, forecast.Spread),
        });
    }

    /// <summary>A spread of ohms on the line of decades; near nothing it is that of the leads.</summary>
    private static PinExpectation Decades(double mean, double spread)
    {
        var ohms = Math.Pow(10, PinExpectation.Place(mean, true));
        return PinExpectation.Ohms(ohms, Math.Max(Math.Log10(1 + (spread / ohms)), LeastDecades));
    }

    private Forecast Of(TerminalName terminal, Instrument instrument, string condition, out bool isLive)
    {
        var check = Check.Create(CheckKind.Reading, CheckSubject.Number, _off.In(condition), new Probe(instrument, terminal, Body));
        isLive = _forecaster.MeanOf(SafetyScreen.HealthyCar(), check, []).Abstains == Abstention.LiveCircuit;
        return _forecaster.Of(SafetyScreen.HealthyCar(), check, []);
    }
}
