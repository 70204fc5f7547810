using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;
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

    private const int MostLooked = 200_000;

    /// <summary>What takes a solution of the network for every look, by check and car.</summary>
    private readonly Dictionary<string, Dictionary<int, Outlook>> _looked = new(StringComparer.Ordinal);

    private int _lookedCount;

    private OperatingPoint?[] _points = [];

    /// <summary>Roughly what each car answers.</summary>
    public void Look(Check check, IReadOnlyList<Hypothesis> cars, ImmutableArray<Repair> repairs, Span<Outlook> outlooks)
    {
        if (check.Subject == CheckSubject.Number && check.Probe.Instrument is Instrument.Volts or Instrument.AmpsClamp)
        {
            OffThePoints(check, cars, repairs, outlooks);
            return;
        }

        if (check.Subject is not CheckSubject.Number and not CheckSubject.LampGlow)
        {
            var column = forecaster.ColumnOf(check);
            for (var i = 0; i < outlooks.Length; i++)
            {
                outlooks[i] = Outlook.Of(forecaster.Of(cars[i], column, repairs));
            }

            return;
        }

        var known = LookedAt(check);
        for (var i = 0; i < outlooks.Length; i++)
        {
            outlooks[i] = cars[i].IsNone ? Outlook.Broad
                : repairs.Length > 0 || cars[i].Faults.Length > 1 ? OffTheMeter(check, cars[i], repairs)
                : Look(known, check, cars[i]);
        }
    }

    private Dictionary<int, Outlook> LookedAt(Check check)
    {
        if (_lookedCount >= MostLooked)
        {
            _looked.Clear();
            _lookedCount = 0;
        }

        if (!_looked.TryGetValue(check.Id, out var known))
        {
            _looked[check.Id] = known = [];
        }

        return known;
    }

    private Outlook Look(Dictionary<int, Outlook> known, Check check, Hypothesis car)
    {
        ref var outlook = ref CollectionsMarshal.GetValueRefOrAddDefault(known, car.Index, out var isKnown);
        if (!isKnown)
        {
            _lookedCount++;
            outlook = OffTheMeter(check, car, []);
        }

        return outlook;
    }

    private Outlook OffTheMeter(Check check, Hypothesis car, ImmutableArray<Repair> repairs)
    {
        if (check.Subject == CheckSubject.LampGlow)
        {
            return Lamp(check, car, repairs);
        }

        var read = forecaster.MeanOf(car, check, repairs);
        if (read.Abstains != Abstention.None)
        {
            return Outlook.Broad;
        }

        var over = read.IsOverLimit(check.Probe.Instrument) ? 1.0 : 0.0;
        return check.Probe.Instrument switch
        {
            Instrument.Ohms => Rough(read.Value, RoughOhms, RoughOhmsShare),
            Instrument.AmpsInline => Rough(read.Value, RoughAmps, RoughAmpsShare),
            _ => Rough(read.Value, RoughVolts, RoughShare),
        } with { OverLimit = over };
    }

    /// <summary>Volts and amps straight from the settled cars, without the meter's own load.</summary>
    private void OffThePoints(Check check, IReadOnlyList<Hypothesis> cars, ImmutableArray<Repair> repairs, Span<Outlook> outlooks)
    {
        var points = _points.Length < outlooks.Length ? _points = new OperatingPoint?[outlooks.Length] : _points;
        points.AsSpan().Clear();
        forecaster.PointsOf(cars, check, repairs, points.AsSpan(0, outlooks.Length));
        var clamped = check.Probe.Instrument == Instrument.AmpsClamp ? check.Probe.About : null;
        var (red, black) = clamped is null
            ? (forecaster.Network.NodeOf(check.Probe.Red!.Value), forecaster.Network.NodeOf(check.Probe.Black!.Value))
            : default;
        for (var i = 0; i < outlooks.Length; i++)
        {
            outlooks[i] = points[i] switch
            {
                not { IsSteady: true } => Outlook.Broad,
                var point when clamped is not null => Rough(Math.Abs(point.WireAmps(clamped)), RoughAmps, RoughAmpsShare),
                var point => Rough(point.NodeVolts(red) - point.NodeVolts(black), RoughVolts, RoughShare),
            };
        }
    }

    private static Outlook Rough(double mean, double least, double share) =>
        new(mean, least + (share * Math.Abs(mean)), 0, default, false);

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
