using System.Collections.Immutable;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Checks;

/// <summary>Which words answer a check; words of one group mean the same to the engine.</summary>
public static class AnswerGroups
{
    private static readonly ImmutableArray<ImmutableArray<AnswerWord>> Heard =
    [
        [AnswerWord.Runs, AnswerWord.Works, AnswerWord.Bright],
        [AnswerWord.RunsSlowly, AnswerWord.Weak, AnswerWord.Dim],
        [AnswerWord.Silent, AnswerWord.Dead, AnswerWord.Dark],
        [AnswerWord.Hums],
    ];

    /// <summary>A load that is only looked at cannot hum.</summary>
    private static readonly ImmutableArray<ImmutableArray<AnswerWord>> Seen = Heard[..3];

    public static ImmutableArray<ImmutableArray<AnswerWord>> Of(CheckSubject subject, Instrument instrument) => subject switch
    {
        CheckSubject.Buzzer => [[AnswerWord.Beeps], [AnswerWord.NoBeep]],
        CheckSubject.LampGlow => [[AnswerWord.Bright], [AnswerWord.Dim], [AnswerWord.Dark]],
        CheckSubject.LoadWork or CheckSubject.WorkHot or CheckSubject.WorkAgain => instrument == Instrument.Ear ? Heard : Seen,
        CheckSubject.RelayClick => [[AnswerWord.Clicks], [AnswerWord.Silent]],
        CheckSubject.FuseLook => [[AnswerWord.Whole], [AnswerWord.Blown]],
        CheckSubject.PinFit => [[AnswerWord.Tight], [AnswerWord.Loose, AnswerWord.Corroded, AnswerWord.Burnt]],
        CheckSubject.JointHeat => [[AnswerWord.Cool], [AnswerWord.Warm, AnswerWord.Hot]],
        CheckSubject.Wiggle => [[AnswerWord.Steady], [AnswerWord.Jumps]],
        CheckSubject.ScanCommand => [[AnswerWord.Commanded], [AnswerWord.NotCommanded]],
        CheckSubject.ScanCode => [[AnswerWord.CodeStored], [AnswerWord.NoCode]],
        CheckSubject.BenchRelay => [[AnswerWord.Passes], [AnswerWord.Fails]],
        CheckSubject.SwapRelay => [[AnswerWord.Cured], [AnswerWord.NotCured]],
        CheckSubject.Repair or CheckSubject.PutBack => [[AnswerWord.Done]],
        _ => [],
    };

    /// <summary>The group a word belongs to, or −1.</summary>
    public static int GroupOf(this Check check, AnswerWord word)
    {
        ArgumentNullException.ThrowIfNull(check);
        for (var i = 0; i < check.Answers.Length; i++)
        {
            if (check.Answers[i].Contains(word))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>What a typed answer to this check may be.</summary>
    /// <param name="check">The check asked for.</param>
    /// <param name="predicted">Readings the living suspects predict; for noticing slips of the unit.</param>
    /// <param name="nominalVolts">12 or 24: what counts as impossible volts.</param>
    public static ExpectedAnswer Expected(this Check check, ImmutableArray<double> predicted, double nominalVolts)
    {
        ArgumentNullException.ThrowIfNull(check);
        var words = check.Answers.SelectMany(g => g);
        if (!check.TakesNumber)
        {
            return ExpectedAnswer.WordOnly(words);
        }

        if (check.Subject == CheckSubject.Number)
        {
            words = words.Append(AnswerWord.Jumps);
        }

        var expected = check.Probe.Instrument switch
        {
            Instrument.Ohms => ExpectedAnswer.Ohms(words),
            Instrument.AmpsClamp or Instrument.AmpsInline =>
                ExpectedAnswer.Amperes(words),
            _ => ExpectedAnswer.Volts(words) with { PlausibleHigh = 1.5 * nominalVolts, PlausibleLow = -1.5 * nominalVolts },
        };
        return expected with { Predicted = predicted };
    }
}
