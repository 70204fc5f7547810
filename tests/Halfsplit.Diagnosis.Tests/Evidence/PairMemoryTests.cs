using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Readings;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Evidence;

/// <summary>Pairs change from reading to reading; what was computed for one pair must not stand in for another.</summary>
public sealed class PairMemoryTests
{
    private static readonly (string Id, double Volts)[] Readings =
    [
        ("volts BAT.pos BAT.neg | key off", 12.6), ("volts F19.1p BODY | key on", 5.1), ("volts F1.2p BODY | key on", 7.3),
        ("volts F18.1p BODY | key on", 3.9), ("volts C3.4b C3.3b | priming", 2.2), ("volts F19.2p BODY | key on", 9.4),
    ];

    [Fact]
    public void Odds_reading_by_reading_are_those_of_all_readings_at_once()
    {
        var circuit = ShippedSheets.Load("pump-feed");
        var stepwise = Investigation.Open(circuit, circuit.Complaints[0]);
        var answers = Readings
            .Select(r => (r.Id, Check: stepwise.FindCheck(r.Id)!, Value: new ReadingParse.Number(r.Volts, Quantity.Volts, 0.01))).ToList();
        var hadPairs = 0;
        for (var i = 0; i < answers.Count; i++)
        {
            stepwise.Record(answers[i].Id, answers[i].Check, answers[i].Value);
            var atOnce = Investigation.Open(circuit, circuit.Complaints[0]);
            foreach (var (id, check, value) in answers.Take(i + 1))
            {
                atOnce.Record(id, check, value);
            }

            var expected = atOnce.Suspects.ToDictionary(s => s.Suspect.Id, s => s.Odds, StringComparer.Ordinal);
            hadPairs += expected.Keys.Any(k => k.Contains(" + ", StringComparison.Ordinal)) ? 1 : 0;
            Assert.All(stepwise.Suspects, s => Assert.Equal(expected[s.Suspect.Id], s.Odds, 1e-9));
        }

        Assert.True(hadPairs > 1, $"{hadPairs}");
    }
}
