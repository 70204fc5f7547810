using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>
/// A quick look at every check, with rough spreads instead of computed ones: a few per cent of the reading and the
/// battery's uncertainty. Only the best of these are computed in full.
/// </summary>
internal sealed class Screening(Forecaster forecaster)
{
    private const double RoughVolts = 0.04;
    private const double RoughShare = 0.02;
    private const double RoughAmps = 0.15;
    private const double RoughAmpsShare = 0.08;
    private const double RoughOhms = 0.3;
    private const double RoughOhmsShare = 0.08;

    /// <summary>Roughly what each car answers.</summary>
    public void Look(Check check, IReadOnlyList<Hypothesis> cars, ImmutableArray<Repair> repairs, Span<Outlook> outlooks)
    {
        for (var i = 0; i < outlooks.Length; i++)
        {
            outlooks[i] = cars[i].IsNone ? Outlook.Broad : Look(check, cars[i], repairs);
        }
    }

    private Outlook Look(Check check, Hypothesis car, ImmutableArray<Repair> repairs)
    {
        if (check.Subject == CheckSubject.LampGlow)
        {
            return Lamp(check, car, repairs);
        }

        if (check.Subject != CheckSubject.Number)
        {
            return Outlook.Of(forecaster.Of(car, check, repairs));
        }

        if (check.Probe.Instrument is Instrument.Volts or Instrument.AmpsClamp)
        {
            return OffThePoint(check, car, repairs);
        }

        var read = forecaster.MeanOf(car, check, repairs);
        if (read.Abstains != Abstention.None)
        {
            return Outlook.Broad;
        }

        var over = read.IsOverLimit(check.Probe.Instrument) ? 1.0 : 0.0;
        var spread = check.Probe.Instrument switch
        {
            Instrument.Ohms => RoughOhms + (RoughOhmsShare * Math.Abs(read.Value)),
            Instrument.AmpsInline => RoughAmps + (RoughAmpsShare * Math.Abs(read.Value)),
            _ => RoughVolts + (RoughShare * Math.Abs(read.Value)),
        };
        return new Outlook(read.Value, spread, over, default, false);
    }

    /// <summary>Volts and amps straight from the settled car, without the meter's own load.</summary>
    private Outlook OffThePoint(Check check, Hypothesis car, ImmutableArray<Repair> repairs)
    {
        var point = forecaster.PointOf(car, check, repairs);
        if (!point.IsSteady)
        {
            return Outlook.Broad;
        }

        if (check.Probe.Instrument == Instrument.AmpsClamp)
        {
            var amps = Math.Abs(point.WireAmps(check.Probe.About!));
            return new Outlook(amps, RoughAmps + (RoughAmpsShare * amps), 0, default, false);
        }

        var volts = point.Volts(check.Probe.Red!.Value) - point.Volts(check.Probe.Black!.Value);
        return new Outlook(volts, RoughVolts + (RoughShare * Math.Abs(volts)), 0, default, false);
    }

    /// <summary>The lamp's glow from the volts and the source resistance there without it.</summary>
    private Outlook Lamp(Check check, Hypothesis car, ImmutableArray<Repair> repairs)
    {
        var nominal = forecaster.Network.Circuit.Battery.NominalVolts;
        var plain = check with { Probe = check.Probe with { Instrument = Instrument.Volts, LampWatts = null } };
        var read = forecaster.MeanOf(car, plain, repairs);
        if (read.Abstains != Abstention.None)
        {
            return Outlook.Broad;
        }

        var lamp = check.Probe.LampOhms(forecaster.Simulator.Meter, nominal);
        return new Outlook(
            0, 1, 0, WordForecasts.Glow(Math.Abs(read.Value) * lamp / (lamp + read.SourceOhms) / nominal), false);
    }
}
