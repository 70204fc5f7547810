using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Evidence;

namespace Halfsplit.Diagnosis.Findings;

/// <summary>Where to look when nothing on the sheet fits.</summary>
/// <param name="Odds">Odds of "none of these".</param>
/// <param name="Causes">What lies outside the sheet and could make this complaint.</param>
/// <param name="Compare">The readings that disagree most with the likeliest suspect, worst first: there the sheet has to be compared with the car.</param>
public sealed record OutsideAdvice(double Odds, ImmutableArray<Message> Causes, ImmutableArray<Observation> Compare)
{
    private static readonly ImmutableArray<DataRow> Table = DataFile.Read(typeof(OutsideAdvice).Assembly, "outside.csv");

    /// <summary>The causes outside the sheet for a load of this circuit.</summary>
    public static ImmutableArray<Message> CausesFor(Circuit circuit, Load load)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(load);
        var kind = KindOf(load);
        var cautions = circuit.Cautions.Concat(load.Notes.Cautions)
            .Concat(circuit.FindPlace(load.Notes.Place)?.Cautions ?? []).ToHashSet(StringComparer.Ordinal);
        var causes = ImmutableArray.CreateBuilder<Message>();
        foreach (var row in Table)
        {
            var needs = row.Text("needs");
            if ((row.Text("load") == "any" || row.Text("load") == kind)
                && (needs.Length == 0 || cautions.Contains(needs) || (needs == "module" && circuit.Parts.Any(p => p is Module))))
            {
                causes.Add(new Message($"outside.{row.Text("code")}"));
            }
        }

        return causes.ToImmutable();
    }

    private static string KindOf(Load load) => load switch
    {
        Motor => "motor",
        Starter => "starter",
        Solenoid => "solenoid",
        Lamp => "lamp",
        Led => "led",
        Heater { Sounds: true } => "sounder",
        _ => "heater",
    };
}
