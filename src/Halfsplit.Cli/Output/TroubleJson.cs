using System.Text.Json;
using Halfsplit.Cli.Terminals;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>What is doubtful, what lies outside the sheet, what has to be put back, as JSON.</summary>
public static class TroubleJson
{
    /// <summary><c>doubtful</c>, <c>outside</c> and <c>putBack</c>.</summary>
    public static void Write(Utf8JsonWriter json, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(session);
        var investigation = session.Investigation;
        json.Array("doubtful", investigation.Doubts, doubt =>
        {
            json.WriteString("id", doubt.Id);
            json.WriteString("check", doubt.Check.Id);
            json.Odds("odds", doubt.Odds);
            json.WriteBoolean("askedAgain", session.Next.Check?.Id == doubt.Check.Id);
        });
        json.WriteBoolean("worksNow", investigation.WorksNow);
        json.Odds("comesAndGoes", investigation.FlickeringOdds);
        var isDone = session.IsDone;
        if (!isDone && (session.Next.Outside ?? investigation.OutsideTheSheet) is { } advice)
        {
            json.Object("outside", () =>
            {
                json.Odds("odds", advice.Odds);
                json.Array("causes", advice.Causes, cause =>
                {
                    json.WriteString("code", cause.Code);
                    json.WriteString("text", CliTexts.Catalog.Say(cause));
                });
                json.Texts("compare", advice.Compare.Select(o => o.Id));
            });
        }
        else
        {
            json.WriteNull("outside");
        }

        PutBack(json, isDone ? [] : session.Next.PutBack);
    }

    /// <summary>What the next person gets: what to put back, the suspects, what was done.</summary>
    public static void HandedOver(Utf8JsonWriter json, Terminal terminal, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        PutBack(json, session.Investigation.PutBackList);
        NextJson.Suspects(json, "suspects", session.Investigation.Suspects);
        json.Array("entries", session.Entries, entry =>
        {
            EntryJson.Write(json, entry);
            json.WriteString("text", EntryText.Of(terminal, session, entry));
        });
    }

    private static void PutBack(Utf8JsonWriter json, IEnumerable<Diagnosis.Planning.PutBackItem> list) => json.Array("putBack", list, item =>
    {
        json.WriteString("id", item.Id);
        json.WriteString("text", CliTexts.Catalog.Say(item.Text));
        json.WriteNumber("minutes", item.Minutes);
    });
}
