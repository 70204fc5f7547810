using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;

namespace Halfsplit.Diagnosis.Safety;

/// <summary>Which cautions a person must see before a step.</summary>
public static class Cautions
{
    private static readonly ImmutableHashSet<string> NeverProbed = ["airbag", "high voltage"];

    private static readonly ImmutableHashSet<string> Known =
        ["fuel vapour", "moving parts", "hot parts", "airbag", "high voltage", "battery gas"];

    /// <summary>Parts that no lead may touch at any price.</summary>
    public static bool ForbidProbing(Circuit circuit, Part part)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(part);
        // A place may be near an airbag; the part itself must not be one.
        return part.Notes.Cautions.Any(NeverProbed.Contains);
    }

    /// <summary>Cautions of a check, most general first, each once.</summary>
    public static ImmutableArray<Message> For(Circuit circuit, DiagnosisOptions options, Position from, Check check)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(check);
        var cautions = NamesAt(circuit, check).Select(Of).ToList();
        var condition = circuit.FindCondition(check.Arrangement.Condition)!;
        if (Cranks(circuit, condition))
        {
            cautions.Add(new Message("caution.cranking"));
        }

        if (RemoteStarter.IsUsed(circuit, options, condition))
        {
            cautions.Add(new Message("caution.remote-starter"));
        }

        if (from.ToWaitFor(circuit, check.Arrangement.Condition).Append(condition).Any(EngineRuns))
        {
            cautions.Add(new Message("caution.engine-running"));
        }

        if (check.Arrangement.Jumpers.Length > 0)
        {
            cautions.Add(new Message("caution.jumper"));
        }

        if (check.Probe.LampWatts is not null)
        {
            cautions.Add(new Message("caution.substitute-load"));
        }

        if (check.Probe.Instrument is Simulation.Instruments.Instrument.Ohms or Simulation.Instruments.Instrument.Continuity)
        {
            cautions.Add(new Message("caution.ohms"));
        }

        if (check.Probe.Instrument == Simulation.Instruments.Instrument.AmpsInline)
        {
            cautions.Add(new Message("caution.inline"));
        }

        if (check.Subject == CheckSubject.SwapRelay)
        {
            cautions.Add(new Message("caution.swap-relay"));
        }

        if (check.Kind == CheckKind.Repair)
        {
            cautions.Add(new Message("caution.repair"));
        }

        return [.. cautions.Distinct()];
    }

    /// <summary>The cautions that the sheet names for the places and the parts of a check, each once.</summary>
    internal static IEnumerable<string> NamesAt(Circuit circuit, Check check) => Access.PlacesOf(circuit, check)
        .SelectMany(p => circuit.FindPlace(p)!.Cautions)
        .Concat(Access.PartsOf(circuit, check).SelectMany(p => p.Notes.Cautions))
        .Distinct(StringComparer.Ordinal);

    /// <summary>The starter turns, or may: there is one and somebody holds the key, or the engine runs next.</summary>
    internal static bool Cranks(Circuit circuit, Condition condition) => condition.StarterAmps is not null
        || condition.NeedsHelper
        && (circuit.Parts.OfType<Starter>().Any() || circuit.Conditions.Any(c => c.EngineTurns && c.After == condition.Name));

    internal static bool EngineRuns(Condition condition) => condition is { EngineTurns: true } or { AlternatorVolts: not null };

    /// <summary>The text of a caution's name; a name of the sheet's own is shown as it is.</summary>
    public static Message Of(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Known.Contains(name)
            ? new Message("caution." + Key(name))
            : new Message("caution.other", name);
    }

    /// <summary>A caution's name as texts and tables have it.</summary>
    internal static string Key(string name) => name.Replace(' ', '-');
}
