using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Drawing.Layers;

namespace Halfsplit.Jobs.Sessions;

/// <summary>What a job lays over the drawing of its circuit.</summary>
public static class JobLayers
{
    /// <summary>Odds of the suspects, the readings, and then the leads of the next check or, once there is one, the finding.</summary>
    /// <param name="words">A value as shown to people.</param>
    public static ImmutableArray<DrawingLayer> Of(JobSession session, Func<ReadingValue, string> words)
    {
        ArgumentNullException.ThrowIfNull(session);
        return Of(session, words, session.IsDone ? null : session.Next.Check, session.Finding);
    }

    /// <summary>The same where check and finding are known: nothing is planned.</summary>
    /// <param name="asked">The check whose leads are shown; null for none.</param>
    /// <param name="blamed">The finding that is marked; null for none.</param>
    public static ImmutableArray<DrawingLayer> Of(
        JobSession session, Func<ReadingValue, string> words, Check? asked, Finding? blamed)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(words);
        var layers = ImmutableArray.CreateBuilder<DrawingLayer>();
        if (!session.IsProven)
        {
            layers.Add(new SuspectLayer(session.Investigation.Suspects));
        }

        layers.Add(new ReadingsLayer([.. session.Entries
            .Where(e => e is { Check.Kind: not (CheckKind.Repair or CheckKind.PutBack), Value: not null })
            .Select(e => new ReadingMark(e.Number, e.Check!.Probe, words(e.Value!)))]));
        if (blamed is { } finding)
        {
            layers.Add(new FaultLayer([.. finding.Blamed.Take(1).SelectMany(b => b.Faults)]));
        }

        if (asked is { Kind: not (CheckKind.Repair or CheckKind.PutBack) } check)
        {
            layers.Add(new LeadsLayer(check.Probe));
        }

        return layers.ToImmutable();
    }
}
