using System.Globalization;
using Halfsplit.Bench.Batteries;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Bench;

/// <summary>Battery, starter and alternator.</summary>
public static class BenchBatteries
{
    public static int Rest(Terminal terminal, BatterySettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        return Enum.TryParse<BatteryType>(settings.Type, ignoreCase: true, out var type) && Enum.IsDefined(type)
            ? AnswerPage.Show(terminal, settings, BatteryRest.Of(type, settings.Volts, settings.Celsius).Then(BatteryRest.Answer))
            : terminal.Fail(
                ExitCode.Usage, settings.Json,
                new Message("bench.bad-battery", settings.Type, string.Join(", ", Enum.GetNames<BatteryType>().Select(n => n.ToLowerInvariant()))));
    }

    public static int TwoLoads(Terminal terminal, TwoLoadsSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        foreach (var text in new[] { settings.Light, settings.Heavy })
        {
            if (Load(text) is null)
            {
                return terminal.Fail(ExitCode.Usage, settings.Json, new Message("bench.bad-load", text));
            }
        }

        return AnswerPage.Show(
            terminal, settings, BatteryOhms.Of(Load(settings.Light)!.Value, Load(settings.Heavy)!.Value, settings.CrankingAmps).Then(BatteryOhms.Answer));
    }

    public static int Crank(Terminal terminal, CrankingSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var question = new CrankingQuestion(settings.Volts, settings.Celsius, settings.Amps, settings.Positive, settings.Negative);
        return AnswerPage.Show(terminal, settings, Cranking.Of(question).Then(Cranking.Answer));
    }

    public static int Charge(Terminal terminal, ChargingSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, Charging.Of(new ChargingQuestion(settings.Volts, settings.Ripple, settings.Positive, settings.Negative)));
    }

    /// <summary>Reads <c>12.5@5</c>: volts at amps.</summary>
    private static LoadedVolts? Load(string text)
    {
        var parts = text.Replace(',', '.').Split('@', StringSplitOptions.TrimEntries);
        return parts.Length == 2 && double.TryParse(parts[0], NumberStyles.Float, CultureInfo.InvariantCulture, out var volts)
            && double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out var amps)
            ? new LoadedVolts(volts, amps)
            : null;
    }
}
