using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>
/// The minutes of many checks from one position, as <see cref="Effort.WeighedMinutesOf"/> counts them one by one: what checks
/// share is counted once.
/// </summary>
internal sealed class ManyMinutes(Circuit circuit, DiagnosisOptions options)
{
    private readonly Dictionary<string, (ImmutableArray<Place> Places, double Reading, double Risk)> _ofChecks = new(StringComparer.Ordinal);

    /// <summary>Each check with its minutes, fewest first.</summary>
    public IEnumerable<(Check Check, double Minutes)> FewestFirst(Position from, IEnumerable<Check> checks)
    {
        var arranging = new Dictionary<(string Arrangement, bool TakesPart), double>();
        double Minutes(Check check)
        {
            var (places, minutes, risk) = Of(check);
            foreach (var place in places)
            {
                minutes += from.Arrangement.Opened.Contains(place.Name) ? 0 : place.OpenMinutes;
            }

            var shared = (check.Arrangement.Key, InstrumentReader.TakesPart(check.Probe.Instrument));
            if (!arranging.TryGetValue(shared, out var arranged))
            {
                arranging[shared] = arranged = Effort.MinutesOfArranging(circuit, options, from, check);
            }

            return Math.Round(minutes + arranged + Effort.MinutesOfSetting(from, check), 2) + risk;
        }

        return checks
            .Select(c => (Check: c, Minutes: Minutes(c)))
            .OrderBy(c => c.Minutes).ThenBy(c => c.Check.Id, StringComparer.Ordinal);
    }

    private (ImmutableArray<Place> Places, double Reading, double Risk) Of(Check check)
    {
        if (!_ofChecks.TryGetValue(check.Id, out var known))
        {
            _ofChecks[check.Id] = known = (
                [.. Access.PlacesOf(circuit, check).Select(p => circuit.FindPlace(p)!).Where(p => p.OpenMinutes > 0)],
                Effort.MinutesOfReading(circuit, check), Risk.MinutesOf(circuit, check));
        }

        return known;
    }
}
