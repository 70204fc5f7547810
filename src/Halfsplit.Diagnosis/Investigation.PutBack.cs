using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>What has to be put back as the car stands now, in order: before a job closes, and before it is handed over.</summary>
    public ImmutableArray<PutBackItem> PutBackList => PutBack.ListOf(Circuit, Assess().Position, HandledSoFar());

    /// <summary>The step that confirms the list; answered <c>done</c>.</summary>
    public Check PutBackCheck => Check.Create(
        CheckKind.PutBack, CheckSubject.PutBack, new Arrangement(CheckCatalog.RestCondition(Circuit)),
        new Probe(Instrument.Eye, null, null));

    private NextStep PutBackStep(Assessment now)
    {
        var list = PutBack.ListOf(Circuit, now.Position, HandledSoFar());
        return new NextStep(
            PutBackCheck, new Effort(Math.Round(list.Sum(i => i.Minutes), 2), [.. list.Select(i => i.Text)]),
            new Message("reason.put-back"), [], null, [], false)
        {
            PutBack = list,
        };
    }

    /// <summary>What the entries say was apart, out or opened at some time.</summary>
    private Handled HandledSoFar()
    {
        var unplugged = ImmutableSortedSet.CreateBuilder<string>(StringComparer.Ordinal);
        var removed = ImmutableSortedSet.CreateBuilder<string>(StringComparer.Ordinal);
        var battery = false;
        var scanned = false;
        var clipped = false;
        foreach (var entry in _entries.Where(e => e.Value is not null))
        {
            var check = entry.Check;
            if (check.Kind == CheckKind.PutBack)
            {
                unplugged.Clear();
                removed.Clear();
                (battery, scanned, clipped) = (false, false, false);
                continue;
            }

            unplugged.UnionWith(check.Arrangement.Unplugged);
            removed.UnionWith(check.Arrangement.Removed);
            clipped |= Circuit.FindCondition(check.Arrangement.Condition) is { } condition && RemoteStarter.IsUsed(Circuit, Options, condition);
            scanned |= check.Subject is CheckSubject.ScanCommand or CheckSubject.ScanCode;
            if (check.Subject is CheckSubject.SwapRelay
                || (check.Subject == CheckSubject.Repair && Circuit.Find(check.Probe.About!) is Fuse or Relay))
            {
                removed.Add(check.Probe.About!);
            }

            battery |= check.Subject == CheckSubject.Repair && TakesBatteryOff(check.Probe.About!);
        }

        var breaks = unplugged.Count + removed.Count > 0 && Circuit.Parts.Any(p => p is Module { Scan: true });
        return new Handled(unplugged.ToImmutable(), removed.ToImmutable(), battery, scanned || breaks, clipped);
    }

    /// <summary>Heavy cables and what hangs on them are worked on with the battery off.</summary>
    private bool TakesBatteryOff(string target) =>
        Circuit.Find(target) is Battery or Alternator or Starter
        || target.Split('~').Any(end => Circuit.Find(TerminalName.Parse(end).Part) is Battery or Alternator or Starter);
}
