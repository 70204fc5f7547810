using Halfsplit.Cli.Output;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Conversation;

/// <summary>
/// The conversation for a program at the other end: before each answer one line with what <c>next --json</c> says, after it
/// one line with what became of it. An answer that is questioned is given again with "confirm " before it.
/// </summary>
public static class DiagnosingAsJson
{
    private const string Confirm = "confirm ", Noticed = "notice ";

    public static bool Run(Terminal terminal, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        while (true)
        {
            JsonOutput.WriteLine(terminal, json => NextJson.Write(json, session));
            terminal.Out.Flush();
            if (session.IsDone)
            {
                return true;
            }

            if (Prompt.Ask(terminal, quiet: true) is not { } line || line is "quit")
            {
                return false;
            }

            var outcome = line switch
            {
                "back" => session.Withdraw(),
                "skip" => session.Skip(),
                "skip place" when session.Next.Check is { } check => session.Skip(check, session.HardestPlace(check)),
                "hand over" => session.HandOver(null, null),
                _ when line.StartsWith(Noticed, StringComparison.Ordinal) =>
                    NoticedChoice.Read(session.Circuit, session.Investigation.Complaint, line[Noticed.Length..]) is { What: { } what }
                        ? session.Notice(what)
                        : new SessionOutcome.Refused(NoticedChoice
                            .Read(session.Circuit, session.Investigation.Complaint, line[Noticed.Length..]).Problem!),
                _ when line.StartsWith(Confirm, StringComparison.Ordinal) => session.Record(line[Confirm.Length..], confirmed: true),
                _ => session.Record(line),
            };
            JsonOutput.WriteLine(terminal, json =>
            {
                json.WriteBoolean("recorded", outcome is SessionOutcome.Kept);
                var message = outcome switch
                {
                    SessionOutcome.Asked asked => asked.Question.Message,
                    SessionOutcome.Refused refused => refused.Message,
                    SessionOutcome.Misplaced misplaced => misplaced.Message,
                    SessionOutcome.NotKept lost => lost.Message,
                    _ => null,
                };
                json.WriteString("code", message?.Code);
                json.WriteString("text", message is null ? null : terminal.Say(message));
                if (outcome is SessionOutcome.Asked { Question: { } question })
                {
                    json.WriteString("meant", EntryText.Value(question.Meant));
                    json.Texts("alternatives", question.Alternatives.Select(EntryText.Value));
                }
            });
        }
    }
}
