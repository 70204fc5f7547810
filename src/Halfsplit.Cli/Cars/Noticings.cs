using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Cars;

/// <summary>What the options say was noticed.</summary>
internal static class Noticings
{
    /// <summary>Each once; what can't be understood, or can't be so together, becomes a problem in <paramref name="names"/>.</summary>
    public static ImmutableArray<Noticed> Of(Circuit circuit, Complaint complaint, IEnumerable<string> said, Names names)
    {
        var things = ImmutableArray.CreateBuilder<Noticed>();
        foreach (var text in said)
        {
            var (what, problem) = NoticedChoice.Read(circuit, complaint, text);
            if (problem is not null)
            {
                names.Add(problem);
                continue;
            }

            if (JobSession.FirstContradiction([.. things, what!]) is { } other)
            {
                names.Add(new Message("noticed.contradicts-itself", what!.ToString(), other.ToString()));
                continue;
            }

            if (!things.Contains(what!))
            {
                things.Add(what!);
            }
        }

        return things.ToImmutable();
    }
}
