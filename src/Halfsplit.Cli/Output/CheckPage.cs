using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Cli.Output;

/// <summary>A check as the person needs it: cautions first, then the way there, the leads, the meter and what to expect.</summary>
public static class CheckPage
{
    public static void Draw(
        Terminal terminal, JobSession session, Check check, Effort effort, Message reason, ImmutableArray<Message> cautions)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(effort);
        terminal.Line(
            terminal.Say(
                "check.heading", session.Entries.Count + 1, Sentence(terminal.Say(CheckTitle.Of(session.Circuit, check))),
                Minutes(effort.Minutes)),
            Page.Heading);
        foreach (var caution in cautions)
        {
            terminal.Line(terminal.Say("check.caution", terminal.Say(caution)), Page.Caution, 2, 2);
        }

        terminal.Line(reason, null, 2);
        terminal.Blank();
        var number = 0;
        foreach (var step in effort.Steps)
        {
            terminal.Line($"{++number}. {Sentence(terminal.Say(step))}", null, 2, 3);
        }

        terminal.Blank();
        Leads(terminal, session, check);
        BoxPage.Draw(terminal, session.Circuit, check);
        if (check.Kind is not (CheckKind.Repair or CheckKind.PutBack))
        {
            ExpectedPicture.Draw(terminal, session, check);
        }
    }

    /// <summary>What can be typed.</summary>
    public static void Answers(Terminal terminal, JobSession session, Check check)
    {
        ArgumentNullException.ThrowIfNull(session);
        var expected = session.Investigation.Expect(check);
        var words = expected.Quantity is null
            ? ""
            : ReadingText.Answers(expected, CliTexts.Words).Split(", ")[0] + ", ";
        var jumps = check.Subject == CheckSubject.Number ? (AnswerWord[])[AnswerWord.Jumps] : [];
        var offered = OfferedWords.Of(session.Circuit, check).Concat(jumps).Select(CliTexts.Words.TextOf);
        var unsure = check.Kind is CheckKind.Repair or CheckKind.PutBack ? [] : (string[])[CliTexts.Words.TextOf(AnswerWord.NotSure)];
        terminal.Row(terminal.Say("check.answer"), words + string.Join(", ", offered.Concat(unsure)));
    }

    public static string Minutes(double minutes) => minutes.ToString("0.#", CliTexts.Formats);

    /// <summary>With a capital first letter, where that letter is no part's name.</summary>
    public static string Sentence(string text) =>
        text.Length > 0 && char.IsAsciiLetterLower(text[0]) ? char.ToUpperInvariant(text[0]) + text[1..] : text;

    private static void Leads(Terminal terminal, JobSession session, Check check)
    {
        if (check.Probe is not { Instrument: not (Instrument.Eye or Instrument.Ear) } probe
            || session.MeterFor(check) is not { } meter || check.Subject == CheckSubject.Wiggle)
        {
            return;
        }

        if (probe is { Red: { } red, Black: { } black })
        {
            terminal.Row(terminal.Say(probe.Instrument == Instrument.TestLamp ? "check.one-end" : "check.red"), red.ToString());
            terminal.Row(terminal.Say(probe.Instrument == Instrument.TestLamp ? "check.other-end" : "check.black"), black.ToString());
        }

        var setting = probe.Instrument switch
        {
            Instrument.TestLamp => terminal.Say(
                probe.LampWatts is null ? "check.test-lamp" : "check.lamp", Round(meter.LampWatts!.Value), Round(meter.InputOhms!.Value)),
            _ when meter.InputOhms is >= 1e6 => terminal.Say(
                "check.setting-input", terminal.Say($"instrument.{probe.Instrument.Name()}"), Round(meter.InputOhms.Value / 1e6)),
            _ => terminal.Say($"instrument.{probe.Instrument.Name()}"),
        };
        terminal.Row(terminal.Say(probe.Instrument == Instrument.TestLamp ? "check.lamp-is" : "check.meter"), setting);
        terminal.Blank();
    }

    private static string Round(double value) => value.ToString("G3", CliTexts.Formats);
}
