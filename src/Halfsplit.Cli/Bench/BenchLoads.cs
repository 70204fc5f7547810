using Halfsplit.Bench.Loads;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Bench;

/// <summary>Lamps, heaters, windings, diodes and sensor supplies.</summary>
public static class BenchLoads
{
    public static int Lamp(Terminal terminal, RatedSettings settings) => Rated(terminal, settings, isLamp: true);

    public static int Heater(Terminal terminal, RatedSettings settings) => Rated(terminal, settings, isLamp: false);

    public static int Winding(Terminal terminal, WindingSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, WindingAid.Of(settings.Kind, settings.Ohms, settings.Celsius).Then(WindingAid.Answer));
    }

    public static int Diode(Terminal terminal, DiodeSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, DiodeAid.Of(settings.OneWay, settings.OtherWay));
    }

    public static int Sensor(Terminal terminal, SensorSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, SensorSupply.Of(new SensorQuestion(settings.Volts, settings.Unplugged, settings.Ground)));
    }

    private static int Rated(Terminal terminal, RatedSettings settings, bool isLamp)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, FilamentAid.Of(isLamp, settings.Watts, settings.Volts).Then(FilamentAid.Answer));
    }
}
