using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>An output's branches: the driving switch and the open-load bias.</summary>
internal readonly record struct OutputBranches(ModuleOutput Output, int Drive, int Bias);

/// <summary>An input's pull branch, from the input to the module's own ground.</summary>
internal readonly record struct InputBranch(ModuleInput Input, int Pull);

/// <summary>
/// A control module: awake when all its feeds carry enough volts against its own ground; drives an output when it is
/// commanded, its needed inputs are active, and it has not switched itself off.
/// State bits: 0 awake; per output driving, limiting, latched off.
/// </summary>
internal sealed class ModuleDevice(
    Module module,
    int innerGround,
    ImmutableArray<(int Node, int Draw)> feeds,
    ImmutableArray<OutputBranches> outputs,
    ImmutableArray<InputBranch> inputs) : Device(module.Id)
{
    private const int Awake = 1;
    private const int PerOutput = 3;

    /// <summary>Below this share of the limit's own drop a limiting output is itself again.</summary>
    private const double LeaveLimit = 0.95;

    public Module Module => module;

    public override DeviceStage Stage => DeviceStage.Slow;

    public override int ParameterCount => 1 + outputs.Length;

    /// <summary>Share of time the condition commands an output: 0 off, 1 steady.</summary>
    public static double Commanded(Condition condition, string part, string output)
    {
        if (!condition.Settings.TryGetValue($"{part}.{output}", out var setting) || setting == "off")
        {
            return 0;
        }

        return setting.EndsWith('%')
            && double.TryParse(setting[..^1].Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out var percent)
            ? Math.Clamp(percent / 100, 0, 1)
            : 1;
    }

    public override void Prepare(Run run)
    {
        var p = Parameters(run);
        p[0] = run.IsFaulted(Part, FaultModes.Dead) ? 1 : 0;
        for (var i = 0; i < outputs.Length; i++)
        {
            var output = outputs[i].Output;
            var target = $"{Part}.{output.Name}";
            var duty = Commanded(run.Condition, Part, output.Name);
            if (run.IsFaulted(target, FaultModes.OutputOff) || run.IsFaulted(target, FaultModes.NotCommanded))
            {
                duty = 0;
            }
            else if (run.IsFaulted(target, FaultModes.OutputOn))
            {
                duty = 2;
            }
            else if (duty is > 0 and < 1)
            {
                run.Duty = duty;
            }

            p[1 + i] = duty;
        }
    }

    public bool IsAwake(Run run) => (run.State[Slot] & Awake) != 0;

    public bool IsDriving(Run run, string output)
    {
        for (var i = 0; i < outputs.Length; i++)
        {
            if (outputs[i].Output.Name == output)
            {
                return (run.State[Slot] & Driving(i)) != 0;
            }
        }

        return false;
    }

    public override void Stamp(Run run, Frame frame)
    {
        var state = run.State[Slot];
        foreach (var (_, draw) in feeds)
        {
            frame.Set(draw, run.Ohms[draw]);
        }

        for (var i = 0; i < outputs.Length; i++)
        {
            StampOutput(run, frame, state, i);
        }

        foreach (var (input, pull) in inputs)
        {
            var volts = (state & Awake) != 0 ? input.PullVolts : 0;
            frame.Set(pull, run.Ohms[pull], -volts / run.Ohms[pull]);
        }
    }

    private void StampOutput(Run run, Frame frame, int state, int i)
    {
        var (output, drive, bias) = outputs[i];
        var duty = Parameters(run)[1 + i];
        var pulsed = duty is > 0 and < 1;
        var on = (state & Driving(i)) != 0 && !(pulsed && frame.PulseOff);
        if (on && (state & Limiting(i)) != 0)
        {
            frame.Set(drive, ElectricalLimits.OpenOhms, output.LimitAmps);
        }
        else
        {
            frame.Set(drive, on ? run.Ohms[drive] : ElectricalLimits.OpenOhms);
        }

        if (bias >= 0)
        {
            frame.Set(
                bias,
                on || (state & Awake) == 0 ? ElectricalLimits.OpenOhms : output.BiasOhms,
                on || (state & Awake) == 0 ? 0 : -output.BiasVolts / output.BiasOhms);
        }
    }

    public override int Next(Run run)
    {
        var p = Parameters(run);
        var state = run.State[Slot];
        var awake = p[0] == 0;
        foreach (var (node, _) in feeds)
        {
            awake &= run.Volts(node) - run.Volts(innerGround) >= module.MinimumVolts * run.ThresholdFactor;
        }

        var next = awake ? Awake : 0;
        for (var i = 0; i < outputs.Length; i++)
        {
            next |= NextOutput(run, state, awake, p[1 + i], i);
        }

        return next;
    }

    /// <summary>Electronics act at once; only a module that wakes or falls asleep waits for its feeds.</summary>
    public override double Urgency(Run run, int next)
    {
        if (((next ^ run.State[Slot]) & Awake) == 0)
        {
            return double.PositiveInfinity;
        }

        var least = double.PositiveInfinity;
        foreach (var (node, _) in feeds)
        {
            least = Math.Min(least, run.Volts(node) - run.Volts(innerGround));
        }

        return Past(module.MinimumVolts * run.ThresholdFactor, least);
    }

    private int NextOutput(Run run, int state, bool awake, double duty, int i)
    {
        var (output, drive, _) = outputs[i];
        if (duty == 2)
        {
            return Driving(i);
        }

        var latched = awake && (state & Latched(i)) != 0;
        var driving = awake && !latched && duty > 0 && NeedsAreMet(run, output);
        if (!driving)
        {
            return latched ? Latched(i) : 0;
        }

        var wasDriving = (state & Driving(i)) != 0;
        if (wasDriving && (state & Limiting(i)) != 0)
        {
            return run.Across(drive) < LeaveLimit * output.LimitAmps * run.Ohms[drive]
                ? Driving(i)
                : Driving(i) | Limiting(i);
        }

        if (wasDriving && Math.Abs(run.Amps(drive)) > output.LimitAmps)
        {
            return output.Latches ? Latched(i) : Driving(i) | Limiting(i);
        }

        return Driving(i);
    }

    private bool NeedsAreMet(Run run, ModuleOutput output)
    {
        foreach (var need in output.Needs)
        {
            if (!IsActive(run, need))
            {
                return false;
            }
        }

        return true;
    }

    private bool IsActive(Run run, string name)
    {
        foreach (var (input, pull) in inputs)
        {
            if (input.Name == name)
            {
                var volts = run.Across(pull);
                return input.ActiveHigh ? volts >= input.ThresholdVolts : volts <= input.ThresholdVolts;
            }
        }

        return false;
    }

    private static int Driving(int output) => 2 << (PerOutput * output);

    private static int Limiting(int output) => 4 << (PerOutput * output);

    private static int Latched(int output) => 8 << (PerOutput * output);
}
