using Halfsplit.Bench.Answers;
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
            ? AnswerPage.Show(terminal, settings, BatteryRest.Of(type, settings.Volts, settings.Celsius, settings.SystemVolts).Then(BatteryRest.Answer))
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
            if (TypedInputs.Loaded(text) is null)
            {
                return terminal.Fail(ExitCode.Usage, settings.Json, new Message("bench.bad-load", text));
            }
        }

        return AnswerPage.Show(
            terminal, settings, BatteryOhms.Of(TypedInputs.Loaded(settings.Light)!.Value, TypedInputs.Loaded(settings.Heavy)!.Value, settings.CrankingAmps, settings.SystemVolts).Then(BatteryOhms.Answer));
    }

    public static int Crank(Terminal terminal, CrankingSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var question = new CrankingQuestion(settings.Volts, settings.Celsius, settings.Amps, settings.Positive, settings.Negative, settings.SystemVolts);
        return AnswerPage.Show(terminal, settings, Cranking.Of(question).Then(Cranking.Answer));
    }

    public static int Charge(Terminal terminal, ChargingSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, Charging.Of(new ChargingQuestion(settings.Volts, settings.Ripple, settings.Positive, settings.Negative, settings.SystemVolts)));
    }
}
