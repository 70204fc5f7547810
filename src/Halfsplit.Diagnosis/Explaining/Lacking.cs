using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>What is not at hand for a check.</summary>
internal static class Lacking
{
    /// <summary>Empty where the check can be done.</summary>
    /// <param name="givenUp">Places and parts out of reach.</param>
    /// <param name="skipped">Ids of checks that the person left out.</param>
    public static ImmutableArray<Message> Of(
        Circuit circuit, DiagnosisOptions options, ImmutableHashSet<string> givenUp, ImmutableHashSet<string> skipped, Check check)
    {
        var lacks = ImmutableArray.CreateBuilder<Message>();
        foreach (var part in Access.PartsOf(circuit, check))
        {
            if (givenUp.Contains(part.Id))
            {
                lacks.Add(new Message("lacks.part", Describe.Part(circuit, part.Id)));
            }
        }

        foreach (var name in Access.PlacesOf(circuit, check))
        {
            if (givenUp.Contains(name))
            {
                lacks.Add(new Message("lacks.place", name));
            }

            if (!options.Tools.IsDefaultOrEmpty)
            {
                lacks.AddRange(circuit.FindPlace(name)!.Tools.Except(options.Tools)
                    .Select(tool => new Message("lacks.tool", tool, name)));
            }
        }

        if (Instruments(options, check) is { } code)
        {
            lacks.Add(new Message(code));
        }

        if (LeadMetres(circuit, check) is var metres && metres > options.LeadMetres)
        {
            lacks.Add(new Message("lacks.lead", Math.Ceiling(metres)));
        }

        if (lacks.Count == 0 && skipped.Contains(check.Id))
        {
            lacks.Add(new Message("lacks.left-out"));
        }

        return lacks.ToImmutable();
    }

    private static string? Instruments(DiagnosisOptions options, Check check) => check switch
    {
        { Probe.Instrument: Instrument.AmpsClamp } when !options.HasClamp => "lacks.clamp",
        { Subject: CheckSubject.LampGlow } when !options.HasTestLamp => "lacks.test-lamp",
        { Subject: CheckSubject.ScanCommand or CheckSubject.ScanCode } when !options.HasScanTool => "lacks.scan-tool",
        { Subject: CheckSubject.SwapRelay } when !options.HasSpareRelay => "lacks.spare-relay",
        _ => null,
    };

    /// <summary>How far the leads must reach; the body is near everywhere.</summary>
    private static double LeadMetres(Circuit circuit, Check check)
    {
        if (check.Probe is not { Red: { } red, Black: { } black } || black.Part == Metal.Body || red.Part == Metal.Body)
        {
            return 0;
        }

        // The battery's posts are where the long lead starts.
        double Reach(string part) =>
            part == circuit.Battery.Id ? 0 : circuit.FindPlace(circuit.Find(part)?.Notes.Place)?.Reach ?? 0;
        return Math.Abs(Reach(red.Part) - Reach(black.Part));
    }
}
