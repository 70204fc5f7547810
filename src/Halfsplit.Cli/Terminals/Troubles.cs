using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Output;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Terminals;

/// <summary>Tells what went wrong: in words on the error stream and, where asked for, as JSON on the output.</summary>
public static class Troubles
{
    /// <summary>Tells and returns the exit code.</summary>
    public static int Fail(this Terminal terminal, int code, bool asJson, params ImmutableArray<Message> problems)
    {
        foreach (var problem in problems)
        {
            foreach (var line in Wrapping.Wrap(terminal.Say("trouble", terminal.Say(problem)), terminal.Width))
            {
                terminal.Error.WriteLine(line);
            }
        }

        if (asJson)
        {
            JsonOutput.Write(terminal, json =>
            {
                json.WriteStartArray("problems");
                foreach (var problem in problems)
                {
                    json.WriteStartObject();
                    json.WriteString("code", problem.Code);
                    json.WriteString("text", terminal.Say(problem));
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            });
        }

        return code;
    }

    /// <summary>Tells an outcome that is not kept, questions left out.</summary>
    public static int Fail(this Terminal terminal, SessionOutcome outcome, bool asJson) => outcome switch
    {
        SessionOutcome.Refused refused => terminal.Fail(ExitCode.Refused, asJson, refused.Message),
        SessionOutcome.Doubted doubted => terminal.Fail(ExitCode.Question, asJson, doubted.Message, new Message("bench.confirm")),
        SessionOutcome.Misplaced misplaced => terminal.Fail(ExitCode.Misplaced, asJson, misplaced.Message),
        SessionOutcome.NotKept lost => terminal.Fail(ExitCode.Broken, asJson, lost.Message),
        _ => throw new ArgumentException("Only what is not kept is a trouble.", nameof(outcome)),
    };
}
