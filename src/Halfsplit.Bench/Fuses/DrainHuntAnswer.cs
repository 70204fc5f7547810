using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Fuses;

/// <summary>Puts a drain hunt into words: the steps, the floor of every fuse, and what the readings so far say.</summary>
public static class DrainHuntAnswer
{
    public static Answer Of(HuntPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var lines = ImmutableArray.CreateBuilder<AnswerLine>();
        if (plan.Question.TotalAmps is { } total)
        {
            lines.Add(new("total", total, Unit.Amp));
        }

        lines.Add(new("allowed", plan.Question.AllowedAmps, Unit.Amp));
        foreach (var line in plan.Lines)
        {
            lines.Add(new("floor", line.FloorAmps, Unit.Amp, line.Fuse.Name));
            if (line.Reading is { } reading)
            {
                lines.Add(new("current", reading.Amps, null, line.Fuse.Name));
            }
        }

        if (plan.Unexplained is { } rest)
        {
            lines.Add(new("unexplained", rest, null));
        }

        return new Answer(
            new Message("bench-hunt.title", plan.Lines.Length, new Measure(plan.Question.StepVolts, Unit.Volt).Say()),
            [new Message("bench-caution.drain"), new Message("bench-caution.fuse-tabs")], lines.ToImmutable(), Judged(plan),
            [FuseDrain.Source, new Message("bench-hunt.source")])
        {
            Steps = Steps(plan),
        };
    }

    private static ImmutableArray<Message> Steps(HuntPlan plan)
    {
        var steps = ImmutableArray.CreateBuilder<Message>();
        var minutes = BenchDefaults.Table.RangeOf("drain.sleep-minutes");
        steps.Add(new Message("bench-hunt.prepare"));
        steps.Add(new Message("bench-hunt.total", new Figure(minutes.Low, "0"), new Figure(minutes.High, "0")));
        if (Names(plan, l => l.CanResolve && l.Reading is null) is { Length: > 0 } fine)
        {
            steps.Add(new Message("bench-hunt.millivolts", fine));
        }

        if (Names(plan, l => !l.CanResolve) is { Length: > 0 } coarse)
        {
            steps.Add(new Message("bench-hunt.coarse", coarse, new Measure(plan.ExcessAmps, Unit.Amp).Say()));
        }

        steps.Add(new Message("bench-hunt.unfused"));
        steps.Add(new Message("bench-hunt.pull-last"));
        return steps.ToImmutable();
    }

    private static ImmutableArray<Message> Judged(HuntPlan plan)
    {
        var judged = ImmutableArray.CreateBuilder<Message>();
        if (plan.Question.TotalAmps is { } total && total <= plan.Question.AllowedAmps)
        {
            judged.Add(new Message("bench-hunt.nothing-to-find"));
            return judged.ToImmutable();
        }

        foreach (var line in plan.Lines.Where(l => l.Reading?.Amps.Range!.Value.Low > plan.Question.AllowedAmps).OrderByDescending(l => l.Reading!.Amps.Value))
        {
            judged.Add(new Message("bench-hunt.found", line.Fuse.Name, line.Reading!.Amps.Say()));
        }

        if (plan.Unexplained is { Range: { } rest })
        {
            judged.Add(rest.Low > plan.Question.AllowedAmps
                ? new Message(plan.Lines.Any(l => l.Reading is null) ? "bench-hunt.go-on" : "bench-hunt.elsewhere", new Measure(rest.Low, Unit.Amp).Say())
                : rest.High <= plan.Question.AllowedAmps ? new Message("bench-hunt.explained") : new Message("bench-hunt.may-be-more"));
        }

        return judged.ToImmutable();
    }

    private static string Names(HuntPlan plan, Func<HuntLine, bool> which) => string.Join(", ", plan.Lines.Where(which).Select(l => l.Fuse.Name));
}
