using Halfsplit.Bench.Pins;
using Halfsplit.Bench.Relays;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Bench;

/// <summary>Which pin is which: of a relay, of a connector. And what to do with a relay once that is known.</summary>
public static class BenchPins
{
    public static int Relay(Terminal terminal, RelaySettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, PinAid.Relay(settings.Pins, settings.Readings));
    }

    public static int Cavities(Terminal terminal, CavitySettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, PinAid.Cavities(settings.Cavities, settings.Functions, settings.Readings));
    }

    public static int Coil(Terminal terminal, CoilSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, CoilPower.Of(settings.Ohms, settings.SupplyVolts, settings.RatedVolts).Then(CoilPower.Answer));
    }

    public static int Contact(Terminal terminal, ContactSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, ContactDrop.Of(settings.Millivolts * 1e-3, settings.Amps).Then(ContactDrop.Answer));
    }
}
