using System.Collections.Immutable;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Devices;
using Halfsplit.Simulation.Networks;

namespace Halfsplit.Simulation.Settling;

/// <summary>How settling ended.</summary>
/// <param name="Chatter">Parts whose states repeat without end; empty if all found their state.</param>
/// <param name="Unsettled">A part whose fast law found no fixed point; null if all did.</param>
internal readonly record struct SettleOutcome(ImmutableArray<string> Chatter, string? Unsettled);

/// <summary>
/// Finds the state of everything in a run: solve, let diodes and filaments settle, then relays, motors and modules
/// together, then let the fuse that would go first go, and again until nothing changes.
/// </summary>
internal sealed class Settler
{
    /// <summary>Relative change of a filament's ohms below which it counts as settled.</summary>
    private const double Settled = 1e-9;

    /// <summary>The same while relays and motors still move: finer would be wasted.</summary>
    private const double NearlySettled = 1e-3;

    /// <summary>Urgencies that differ by a smaller share are equal.</summary>
    private const double EquallyUrgent = 1e-6;

    private const int MostFastRounds = 200;
    private const int MostRounds = 400;

    private readonly Run _run;
    private readonly NetworkSolver _solver;
    private readonly double[] _injected;
    private readonly double[] _leaks;
    private double _lastMove;

    /// <param name="run">The car to settle.</param>
    /// <param name="solver">A solver on the shape of the run's network with what is laid on.</param>
    public Settler(Run run, NetworkSolver solver)
    {
        _run = run;
        _solver = solver;
        _injected = new double[run.Network.NodeNames.Length];
        _leaks = Leaks(_injected.Length);
        foreach (var frame in run.Frames)
        {
            foreach (var device in run.Network.Fixed)
            {
                device.Stamp(run, frame);
            }
        }
    }

    public static double[] Leaks(int nodes)
    {
        var leaks = new double[nodes];
        Array.Fill(leaks, ConductanceRange.DefaultLeak);
        return leaks;
    }

    public SettleOutcome Settle()
    {
        var outcome = SettleStates(onlyMostUrgent: false);
        // Devices that wait for each other can swing in step although each alone would rest; life has no common clock.
        return outcome.Chatter.Length > 0 ? SettleStates(onlyMostUrgent: true) : outcome;
    }

    private SettleOutcome SettleStates(bool onlyMostUrgent)
    {
        var seen = new List<int[]>();
        for (var round = 0; round < MostRounds; round++)
        {
            if (SettleFast(NearlySettled) is { } unsettled)
            {
                return new SettleOutcome([], unsettled);
            }

            if (seen.FindIndex(s => s.AsSpan().SequenceEqual(_run.State)) is >= 0 and var first)
            {
                if (onlyMostUrgent && MeltWhileSwinging(seen.Count - first))
                {
                    seen.Clear();
                    continue;
                }

                return new SettleOutcome(Swinging(seen, first), null);
            }

            seen.Add([.. _run.State]);
            if (StepSlow(onlyMostUrgent))
            {
                continue;
            }

            if (_lastMove > Settled)
            {
                if (SettleFast(Settled) is { } restless)
                {
                    return new SettleOutcome([], restless);
                }

                if (StepSlow(onlyMostUrgent))
                {
                    continue;
                }
            }

            if (!MeltNext())
            {
                return new SettleOutcome([], null);
            }

            seen.Clear();
        }

        return new SettleOutcome([_run.Network.Devices[0].Part], null);
    }

    private string? SettleFast(double share)
    {
        var devices = _run.Network.Fast;
        string? last = null;
        for (var round = 0; round < MostFastRounds; round++)
        {
            Solve();
            last = null;
            _lastMove = 0;
            foreach (var device in devices)
            {
                if (device is LampDevice lamp)
                {
                    last = Moved(lamp.Follow(_run), share) ? device.Part : last;
                }
                else
                {
                    var next = device.Next(_run);
                    last = next != _run.State[device.Slot] ? device.Part : last;
                    _run.State[device.Slot] = next;
                }
            }

            if (FollowLaidOnLamps(share))
            {
                last ??= "";
            }

            if (last is null)
            {
                return null;
            }
        }

        return last;
    }

    private bool Moved(double move, double share)
    {
        _lastMove = Math.Max(_lastMove, move);
        return move > share;
    }

    private bool FollowLaidOnLamps(double share)
    {
        var moved = false;
        for (var i = 0; i < _run.Attachments.Length; i++)
        {
            var attachment = _run.Attachments[i];
            if (attachment.LampVolts > 0)
            {
                var volts = _run.Volts(attachment.From) - _run.Volts(attachment.To);
                var ohms = FilamentLaw.Ohms(attachment.Ohms, attachment.LampVolts, volts);
                moved |= Moved(Math.Abs(ohms - _run.AttachmentOhms[i]) / ohms, share);
                _run.AttachmentOhms[i] = ohms;
            }
        }

        return moved;
    }

    /// <summary>
    /// Moves what the volts call on to move: everything, or only what they push furthest past its threshold. Parts pushed
    /// equally far move together, so that nothing rests on their order in the sheet.
    /// </summary>
    private bool StepSlow(bool onlyMostUrgent)
    {
        var least = onlyMostUrgent ? MostUrgent() * (1 - EquallyUrgent) : double.NegativeInfinity;
        var moved = false;
        foreach (var device in _run.Network.Slow)
        {
            if (device.Next(_run) is var next && next != _run.State[device.Slot]
                && (!onlyMostUrgent || device.Urgency(_run, next) >= least))
            {
                _run.State[device.Slot] = next;
                moved = true;
            }
        }

        return moved;
    }

    private double MostUrgent()
    {
        var most = 0.0;
        foreach (var device in _run.Network.Slow)
        {
            if (device.Next(_run) is var next && next != _run.State[device.Slot])
            {
                most = Math.Max(most, device.Urgency(_run, next));
            }
        }

        return most;
    }

    /// <summary>Lets the fuse that would go first within the condition's time go.</summary>
    private bool MeltNext()
    {
        var melting = _run.Network.Melting;
        var seconds = new double[melting.Length];
        for (var i = 0; i < seconds.Length; i++)
        {
            seconds[i] = SecondsLeft(melting[i]);
        }

        return MeltFirst(seconds);
    }

    /// <summary>The same while parts chatter: heat adds up over the swing, whose states are taken as equally long.</summary>
    /// <param name="period">States of the swing.</param>
    private bool MeltWhileSwinging(int period)
    {
        var melting = _run.Network.Melting;
        var perSecond = new double[melting.Length];
        for (var step = 0; step < period; step++)
        {
            for (var i = 0; i < perSecond.Length; i++)
            {
                perSecond[i] += 1 / (SecondsLeft(melting[i]) * period);
            }

            StepSlow(onlyMostUrgent: true);
            SettleFast(NearlySettled);
        }

        return MeltFirst(Array.ConvertAll(perSecond, r => 1 / r));
    }

    private double SecondsLeft(Device device) => device is OverloadDevice overload && !OverloadDevice.IsGone(_run.State[device.Slot])
        ? overload.SecondsLeft(_run)
        : double.PositiveInfinity;

    private bool MeltFirst(ReadOnlySpan<double> seconds)
    {
        var first = -1;
        var least = _run.Seconds;
        for (var i = 0; i < seconds.Length; i++)
        {
            if (seconds[i] < least)
            {
                (first, least) = (i, seconds[i]);
            }
        }

        if (first >= 0)
        {
            ((OverloadDevice)_run.Network.Melting[first]).Go(_run);
        }

        return first >= 0;
    }

    private ImmutableArray<string> Swinging(List<int[]> seen, int first)
    {
        var parts = ImmutableArray.CreateBuilder<string>();
        foreach (var device in _run.Network.Devices)
        {
            for (var i = first + 1; i < seen.Count; i++)
            {
                if (seen[i][device.Slot] != seen[first][device.Slot])
                {
                    parts.Add(device.Part);
                    break;
                }
            }
        }

        return parts.ToImmutable();
    }

    /// <summary>Stamps and solves every frame with the present states.</summary>
    public void Solve()
    {
        foreach (var frame in _run.Frames)
        {
            foreach (var device in _run.Network.Stamping)
            {
                device.Stamp(_run, frame);
            }

            var laidOn = _run.Network.Branches.Length;
            for (var i = 0; i < _run.Attachments.Length; i++)
            {
                frame.Conductance[laidOn + i] = 1 / _run.AttachmentOhms[i];
            }

            Inject(_run, frame, _injected);
            _solver.FactorAgainAndSolve(frame.Conductance, _leaks, _injected, frame.Volts);
        }

        _run.Average();
    }

    /// <summary>Collects the branches' sources into currents at the nodes.</summary>
    public static void Inject(Run run, Frame frame, double[] injected)
    {
        Array.Clear(injected);
        var branches = run.Network.Branches;
        for (var i = 0; i < branches.Length; i++)
        {
            var source = frame.Source[i];
            if (source == 0)
            {
                continue;
            }

            if (branches[i].From >= 0)
            {
                injected[branches[i].From] -= source;
            }

            if (branches[i].To >= 0)
            {
                injected[branches[i].To] += source;
            }
        }
    }
}
