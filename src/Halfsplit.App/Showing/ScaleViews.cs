using Halfsplit.App.Views;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Instruments;
using RoundAxis = Halfsplit.Drawing.Small.RoundAxis;

namespace Halfsplit.App.Showing;

/// <summary>What the suspects would show at a check: bands on an axis, and words.</summary>
internal static class ScaleViews
{
    private const int Asked = 1000, Named = 3, Steps = 5;

    /// <summary>Odds under which a suspect is not drawn, and a band of them is left out.</summary>
    private const double WorthDrawing = 0.0005, WorthABand = 0.005;

    /// <summary>Values closer than this share of the axis are one band.</summary>
    private const double OneBand = 0.025;

    public static (ScaleView? Scale, AnswerBandView[] Words) Of(Investigation investigation, Check check)
    {
        List<ExpectedReading> expected =
        [
            .. investigation.Expected(check, Asked).Where(r => r.Suspect!.Odds >= WorthDrawing),
            investigation.ExpectedHealthy(check),
        ];
        var numbers = expected.Where(r => r.Mean is not null).OrderBy(r => r.Mean!.Value).ToList();
        var words = expected.Where(r => r.Mean is null && r.Word is not null).GroupBy(r => r.Word!).Select(g => g.ToList());
        return (
            numbers.Count == 0 ? null : Scale(check, numbers),
            [.. words.Where(IsWorthShowing).Select(w => Words(investigation.Circuit, check, w))]);
    }

    public static string Unit(Check check) => check.Probe.Instrument switch
    {
        Instrument.Ohms or Instrument.Continuity => "Ω",
        Instrument.AmpsClamp or Instrument.AmpsInline => "A",
        Instrument.Duty => "%",
        _ => "V",
    };

    private static ScaleView Scale(Check check, List<ExpectedReading> numbers)
    {
        var axis = RoundAxis.Of([.. numbers.Select(n => n.Mean!.Value)], Steps, Unit(check) == "Ω");
        var bands = new List<List<ExpectedReading>>();
        foreach (var number in numbers)
        {
            if (bands.Count == 0 || axis.At(number.Mean!.Value) - axis.At(bands[^1][^1].Mean!.Value) > OneBand)
            {
                bands.Add([]);
            }

            bands[^1].Add(number);
        }

        return new ScaleView(
            Unit(check), [.. axis.Ticks.Select(t => new ScaleTick(axis.At(t), axis.Label(t, AppTexts.Formats)))],
            [.. bands.Where(IsWorthShowing).Select((band, i) => Band(check, axis, band, ((char)('A' + (i % 26))).ToString()))]);
    }

    private static bool IsWorthShowing(List<ExpectedReading> readings) =>
        readings.Exists(r => r.Suspect is null) || Odds(readings) >= WorthABand;

    private static double Odds(List<ExpectedReading> readings) => readings.Sum(r => r.Suspect?.Odds ?? 0);

    private static ScaleBand Band(Check check, RoundAxis axis, List<ExpectedReading> band, string letter)
    {
        var (low, high) = (band[0].Mean!.Value, band[^1].Mean!.Value);
        var (from, to) = (axis.Text(low, AppTexts.Formats), axis.Text(high, AppTexts.Formats));
        var range = from == to ? AppTexts.Say("app.scale.about", from, Unit(check)) : AppTexts.Say("app.scale.between", from, to, Unit(check));
        return new ScaleBand(
            letter, axis.At(low), axis.At(high), range, Odds(band), OddsText(band), Names(band), IsHealthy(band));
    }

    private static AnswerBandView Words(Circuit circuit, Check check, List<ExpectedReading> readings)
    {
        return new AnswerBandView(Word(circuit, check, readings[0].Word!), Odds(readings), OddsText(readings), Names(readings), IsHealthy(readings));
    }

    /// <summary>An answer as it is offered at this check; what is no answer, as it is.</summary>
    public static string Word(Circuit circuit, Check check, string id) =>
        AnswerWord.Find(id) is { } word ? AppTexts.Words.TextOf(OfferedWords.For(circuit, check, word)) : id;

    private static bool IsHealthy(List<ExpectedReading> readings) => readings.Exists(r => r.Suspect is null);

    private static string OddsText(List<ExpectedReading> readings) =>
        readings.TrueForAll(r => r.Suspect is null) ? "" : OddsWords.Of(Odds(readings));

    private static string Names(List<ExpectedReading> readings)
    {
        var suspects = readings.Select(r => r.Suspect).OfType<Diagnosis.Findings.SuspectOdds>().OrderByDescending(s => s.Odds).ToList();
        var names = string.Join(", ", suspects.Take(Named).Select(s => s.Suspect.Id));
        return suspects.Count > Named ? AppTexts.Say("app.scale.and-more", names, suspects.Count - Named) : names;
    }
}
