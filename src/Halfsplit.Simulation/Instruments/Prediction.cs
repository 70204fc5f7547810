namespace Halfsplit.Simulation.Instruments;

/// <summary>Why a meter cannot say.</summary>
public enum Abstention
{
    None,

    /// <summary>Ohms asked where volts stand.</summary>
    LiveCircuit,

    /// <summary>The circuit chatters, so that no steady reading exists.</summary>
    Chatter,

    /// <summary>The signal is a message or a waveform that a meter cannot follow.</summary>
    Waveform,
}

/// <summary>What an instrument would show.</summary>
/// <param name="Value">Volts, ohms, amps; for a lamp the volts across it.</param>
/// <param name="SourceOhms">Thevenin resistance between the leads, without the meter.</param>
/// <param name="LoadedAmps">Amps that flow through the thing measured: what makes a volts reading a loaded one.</param>
/// <param name="Abstains">Why there is no value; <see cref="Abstention.None"/> if there is one.</param>
public readonly record struct Prediction(double Value, double SourceOhms, double LoadedAmps, Abstention Abstains)
{
    /// <summary>The meter would show over-limit.</summary>
    public bool IsOverLimit(Instrument instrument) =>
        instrument is Instrument.Ohms or Instrument.Continuity && Value > Meter.OverLimitOhms;
}
