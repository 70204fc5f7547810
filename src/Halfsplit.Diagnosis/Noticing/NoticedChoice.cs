using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;

namespace Halfsplit.Diagnosis.Noticing;

/// <summary>Something that can be said of a car with this circuit.</summary>
/// <param name="Kind">What.</param>
/// <param name="Things">What it can be about, in the order of the sheet; empty where it is about nothing.</param>
/// <param name="Usual">What it is about when nothing is named; null: it says nothing of one, or one must be named.</param>
public sealed partial record NoticedChoice(NoticedKind Kind, ImmutableArray<string> Things, string? Usual)
{
    public bool MustName => Kind.About != NoticedAbout.Nothing && !Kind.MayLeaveOut && Usual is null;

    /// <summary>All that can be said of this circuit and complaint.</summary>
    public static ImmutableArray<NoticedChoice> For(Circuit circuit, Complaint complaint)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(complaint);
        return [.. NoticedTable.All
            .Select(kind => Of(circuit, complaint, kind))
            .Where(c => c.Kind.About == NoticedAbout.Nothing || c.Things.Length > 0)
            // Only what turns can strain without turning.
            .Where(c => c.Kind.Sign != Signs.Stalled || circuit.Find(complaint.Load) is Motor or Starter)];
    }

    /// <summary>Understands <c>NAME[:PART]</c>; blanks for dashes and either case will do.</summary>
    /// <returns>What was noticed, or the problem.</returns>
    public static (Noticed? What, Message? Problem) Read(Circuit circuit, Complaint complaint, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var name = (colon < 0 ? text : text[..colon]).Trim();
        var about = colon < 0 ? null : text[(colon + 1)..].Trim();
        var choices = For(circuit, complaint);
        var plain = name.Replace(' ', '-');
        var choice = choices.FirstOrDefault(c => Same(c.Kind.Name, plain));
        if (choice is null)
        {
            var names = choices.Select(c => c.Kind.Name).ToList();
            if (CodeNumber().IsMatch(name))
            {
                var kinds = names.Where(n => n.StartsWith("code-", StringComparison.Ordinal)).ToList();
                return (null, kinds.Count > 0 ? new Message("noticed.code-number", name, string.Join(", ", kinds)) : new Message("noticed.no-codes", name));
            }

            return (null, new Message("noticed.unknown", name, Spelling.Hint(plain, names), string.Join(", ", names)));
        }

        if (string.IsNullOrEmpty(about))
        {
            return choice.MustName
                ? (null, new Message("noticed.name-one", choice.Kind.Name, string.Join(", ", choice.Things)))
                : (new Noticed(choice.Kind, choice.Usual), null);
        }

        if (choice.Things.Length == 0)
        {
            return (null, new Message("noticed.names-nothing", choice.Kind.Name, about));
        }

        return choice.Things.FirstOrDefault(t => Same(t, about)) is { } thing
            ? (new Noticed(choice.Kind, thing), null)
            : (null, new Message(
                "noticed.no-such-thing", choice.Kind.Name, about, Spelling.Hint(about, choice.Things), string.Join(", ", choice.Things)));
    }

    /// <summary>As the job file keeps it; null where this program or sheet knows no such thing.</summary>
    public static Noticed? Find(Circuit circuit, Complaint complaint, string name, string? about) =>
        NoticedTable.Find(name) is { } kind && Of(circuit, complaint, kind) is var choice
            && (about is null ? !choice.MustName : choice.Things.Contains(about))
            ? new Noticed(kind, about ?? choice.Usual)
            : null;

    /// <summary>A trouble code by its number, as SAE J2012 forms them.</summary>
    [GeneratedRegex("^[PCBU][0-3][0-9A-F]{3}$", RegexOptions.IgnoreCase)]
    private static partial Regex CodeNumber();

    private static NoticedChoice Of(Circuit circuit, Complaint complaint, NoticedKind kind)
    {
        var things = ThingsOf(circuit, complaint, kind);
        var usual = kind.MayLeaveOut ? null
            : kind.About == NoticedAbout.Load && kind.Sign == Signs.OwnFault ? complaint.Load
            : things.Length == 1 ? things[0]
            : null;
        return new NoticedChoice(kind, things, usual);
    }

    /// <summary>What it can be about, in the order of the sheet.</summary>
    internal static ImmutableArray<string> ThingsOf(Circuit circuit, Complaint complaint, NoticedKind kind) => kind.About switch
    {
        NoticedAbout.Fuse => Ids(circuit.Parts.Where(p => p is Fuse)),
        NoticedAbout.Relay => Ids(circuit.Parts.OfType<Relay>()),
        // Others are those beside the one complained of.
        NoticedAbout.Load => Ids(circuit.Parts.OfType<Load>().Where(l => l.Id != complaint.Load || kind.Sign == Signs.OwnFault || kind.IsFromBench)),
        NoticedAbout.Ground => Ids(circuit.Parts.OfType<Ground>()),
        NoticedAbout.Joint => Ids(circuit.Parts.Where(p => p is Connector or Ground || p.IsPluggable)),
        NoticedAbout.Part => Ids(circuit.Parts.Where(p => p is not (Splice or Metal))),
        NoticedAbout.Place => [.. circuit.Places.Select(p => p.Name)],
        NoticedAbout.Output => [.. circuit.Parts.OfType<Module>().SelectMany(m => m.Outputs.Select(o => $"{m.Id}.{o.Name}"))],
        NoticedAbout.Module => Ids(circuit.Parts.OfType<Module>()),
        NoticedAbout.Battery => Ids(circuit.Parts.OfType<Battery>()),
        NoticedAbout.Alternator => Ids(circuit.Parts.OfType<Alternator>()),
        NoticedAbout.Motor => Ids(circuit.Parts.OfType<Motor>()),
        NoticedAbout.Diode => Ids(circuit.Parts.OfType<Diode>()),
        _ => [],
    };

    private static ImmutableArray<string> Ids(IEnumerable<Part> parts) => [.. parts.Select(p => p.Id)];

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}

/// <summary>What was noticed, in words.</summary>
public static class NoticedText
{
    public static Message Of(Circuit circuit, Noticed what)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(what);
        return what.About is { } about
            ? new Message(
                $"noticed-of.{what.Kind.Name}",
                what.Kind.About == NoticedAbout.Place ? new Message("part.bare", about) : Describe.Target(circuit, about))
            : Of(what.Kind);
    }

    /// <summary>Without what it is about.</summary>
    public static Message Of(NoticedKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return new Message($"noticed.{kind.Name}");
    }
}
