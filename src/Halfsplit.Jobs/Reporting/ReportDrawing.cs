using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Drawing;
using Halfsplit.Drawing.Layers;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Jobs.Reporting;

/// <summary>The circuit of a job with the fault marked: for a colleague the whole with the readings at their places, for the owner what is around the fault.</summary>
public static class ReportDrawing
{
    /// <summary>A whole circuit on a few centimetres of paper can't be read.</summary>
    private static readonly (double Width, double Height) OwnersWindow = (560, 200);

    /// <summary>SVG in the plain colours of paper.</summary>
    public static string Svg(JobSession session, Report report, TextCatalog texts, ReportReader reader)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(texts);
        var layers = ImmutableArray.CreateBuilder<DrawingLayer>();
        if (reader == ReportReader.Colleague)
        {
            layers.Add(new ReadingsLayer([.. report.Steps
                .Where(s => s is { Sort: StepSort.Reading, Check: not null, Read: not null })
                .Select(s => new ReadingMark(s.Number, s.Check!.Probe, SpokenReading.Of(s.Read!, texts.Language)))]));
        }

        if (report.Finding is { } finding)
        {
            layers.Add(new FaultLayer([.. finding.Finding.Blamed.Take(1).SelectMany(b => b.Faults)]));
        }

        return CircuitDrawing.Svg(session.Circuit, new DrawingOptions
        {
            Layers = layers.ToImmutable(),
            Texts = texts,
            Switchable = false,
            AroundFault = reader == ReportReader.Owner ? OwnersWindow : null,
        });
    }
}
