using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Jobs.Events;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;
using Observation = Halfsplit.Jobs.Events.Observation;

namespace Halfsplit.Jobs.Sessions;

/// <summary>Finds the engine's check for what a job file holds.</summary>
internal static class StoredChecks
{
    /// <summary>
    /// The check of an observation: by its id, else put together from what the observation names, so that a reading of
    /// the person's own choice or of another version of the engine counts. Null where that can't be done.
    /// </summary>
    public static Check? Find(Investigation investigation, Observation seen) =>
        investigation.FindCheck(seen.Check) ?? Rebuild(investigation, seen);

    /// <summary>The check that stands for a repair; null where the engine knows no such repair.</summary>
    public static Check? FindRepair(Investigation investigation, string repair)
    {
        var space = repair.IndexOf(' ', StringComparison.Ordinal);
        if (space < 0)
        {
            return null;
        }

        var check = Check.Create(
            CheckKind.Repair, CheckSubject.Repair, new Arrangement(CheckCatalog.RestCondition(investigation.Circuit)),
            new Probe(Instrument.Eye, null, null, repair[(space + 1)..]), repair);
        return investigation.FindCheck(check.Id);
    }

    /// <summary>
    /// A look at something in this place, or at this part: what stands for giving it up where no check is named. Null where
    /// nothing is there, and nothing is lost.
    /// </summary>
    public static Check? Needing(Investigation investigation, string place)
    {
        var circuit = investigation.Circuit;
        var part = circuit.Find(place) ?? circuit.Parts.FirstOrDefault(p => p.Notes.Place == place);
        return part is null ? null : Check.Create(
            CheckKind.Look, CheckSubject.PinFit, new Arrangement(CheckCatalog.RestCondition(circuit)),
            new Probe(Instrument.Eye, null, null, part.Id));
    }

    private static Check? Rebuild(Investigation investigation, Observation seen)
    {
        if (!InstrumentNames.TryParse(seen.Instrument, out var instrument)
            || instrument is Instrument.Eye or Instrument.Ear
            || ArrangementOf(investigation.Circuit, seen.Arrangement) is not { } arrangement)
        {
            return null;
        }

        var red = Terminal(investigation, seen.Red);
        var black = Terminal(investigation, seen.Black);
        var isClamp = instrument == Instrument.AmpsClamp;
        if (isClamp
            ? seen.About is not { } wire || investigation.Circuit.Wires.All(w => w.Id != wire)
            : red is null || black is null)
        {
            return null;
        }

        var subject = instrument switch
        {
            Instrument.Continuity => CheckSubject.Buzzer,
            Instrument.TestLamp => CheckSubject.LampGlow,
            _ => CheckSubject.Number,
        };
        return Check.Create(
            seen.Kind == "proof" ? CheckKind.Proof : CheckKind.Reading, subject, arrangement,
            new Probe(instrument, red, black, seen.About, seen.LampWatts));
    }

    private static TerminalName? Terminal(Investigation investigation, string? text) =>
        text is not null && TerminalName.Parse(text) is var name && investigation.Network.HasTerminal(name) ? name : null;

    private static Arrangement? ArrangementOf(Circuit circuit, ArrangementUsed used)
    {
        if (circuit.FindCondition(used.Condition) is not { } condition
            || used.Unplugged.Concat(used.Removed).Any(p => circuit.Find(p) is null))
        {
            return null;
        }

        var arrangement = new Arrangement(condition.Name);
        foreach (var name in used.Unplugged)
        {
            arrangement = arrangement.Unplug(name);
        }

        foreach (var name in used.Removed)
        {
            arrangement = arrangement.Remove(name);
        }

        foreach (var jumper in used.Jumpers)
        {
            var (from, to) = (TerminalName.Parse(jumper.From), TerminalName.Parse(jumper.To));
            if (!circuit.Terminals.Contains(from) || !circuit.Terminals.Contains(to))
            {
                return null;
            }

            arrangement = arrangement.WithJumper(from, to);
        }

        return arrangement;
    }
}
