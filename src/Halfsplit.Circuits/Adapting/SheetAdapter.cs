using System.Collections.Immutable;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Adapting;

/// <summary>
/// Makes a sheet fit another car, one change at a time. What comes out has no errors and reads back as it is written;
/// a change that would break the circuit is refused with the words of the lint.
/// </summary>
public static class SheetAdapter
{
    /// <summary>Makes one change. The caller's circuit stays as it is.</summary>
    public static Adaptation Apply(Circuit circuit, SheetChange change)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(change);
        var draft = new AdaptingDraft(circuit);
        var problem = change switch
        {
            TitleSheet title => Title(draft, title),
            RenamePart rename => PartChanges.Rename(draft, rename),
            NamePart name => PartChanges.Name(draft, name),
            PlacePart place => PartChanges.Place(draft, place),
            SlotPart slot => PartChanges.Slot(draft, slot),
            PricePart price => PartChanges.Price(draft, price),
            OpenPlace open => PlaceChanges.Open(draft, open),
            ColourWire colour => WireChanges.Colour(draft, colour),
            GaugeWire gauge => WireChanges.Gauge(draft, gauge),
            LengthWire length => WireChanges.Length(draft, length),
            InsertConnector connector => WireInsertion.Connector(draft, connector),
            InsertSplice splice => WireInsertion.Splice(draft, splice),
            RemoveRelay relay => RelayRemoval.Apply(draft, relay),
            AddRelay relay => RelayAddition.Apply(draft, relay),
            SwitchGroundSide side => GroundSide.Apply(draft, side),
            _ => throw new ArgumentException($"There is no such change as {change.GetType().Name}.", nameof(change)),
        };
        return problem is null ? Judge(circuit, draft) : Adaptation.Refused(problem);
    }

    /// <summary>Makes changes one after another, each on what the one before left; stops at the first that is refused.</summary>
    public static Adaptation Apply(Circuit circuit, IEnumerable<SheetChange> changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        var (assumptions, warnings) = (new List<Message>(), new List<Message>());
        foreach (var change in changes)
        {
            var step = Apply(circuit, change);
            if (step.Circuit is null)
            {
                return step;
            }

            circuit = step.Circuit;
            assumptions.AddRange(step.Assumptions);
            warnings.AddRange(step.Warnings);
        }

        return new Adaptation(circuit, null, [.. assumptions], [.. warnings.Distinct()]);
    }

    private static Message? Title(AdaptingDraft draft, TitleSheet change)
    {
        draft.Title = change.Title.Trim();
        return draft.Title.Length > 0 ? null : new Message("adapt.empty-title");
    }

    /// <summary>The circuit as it is written and read back, if nothing is wrong with it.</summary>
    private static Adaptation Judge(Circuit parent, AdaptingDraft draft)
    {
        var built = draft.Build();
        if (built.Circuit is not { } circuit)
        {
            return Adaptation.Refused(new Message("adapt.refused-by-lint", built.Problems[0].Message));
        }

        var read = SheetReader.Read(SheetWriter.Write(circuit));
        var problems = read.Circuit is null ? read.Problems : read.Problems.AddRange(CircuitLint.Check(read.Circuit));
        var said = CircuitLint.Check(parent).Select(p => p.Message).ToHashSet();
        return problems.FirstOrDefault(p => p.Severity == ProblemSeverity.Error) is { } error
            ? Adaptation.Refused(new Message("adapt.refused-by-lint", error.Message))
            : new Adaptation(
                read.Circuit, null, [.. draft.Assumptions],
                [.. problems.Where(p => p.Severity == ProblemSeverity.Warning && !said.Contains(p.Message)).Select(p => p.Message).Distinct()]);
    }
}
