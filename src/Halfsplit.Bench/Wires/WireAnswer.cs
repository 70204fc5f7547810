using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Wires;

/// <summary>Puts a wire's result into words.</summary>
public static class WireAnswer
{
    public static Answer Of(WireResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var question = result.Question;
        var lines = ImmutableArray.CreateBuilder<AnswerLine>();
        lines.Add(new("resistance", result.Ohms, null));
        lines.Add(new("drop", result.Drop, null));
        lines.Add(new("drop-share", 100 * result.DropShare, Unit.Percent));
        lines.Add(new("loss", result.Loss, null));
        lines.Add(new("loss-per-metre", result.WattsPerMetre, Unit.WattPerMetre));
        lines.Add(new("rise", result.RiseKelvin, Unit.Kelvin));
        lines.Add(new("bearable", result.BearableAmps, Unit.Amp));
        lines.Add(new("heat-class", new Message($"bench-heat.{result.HeatClass}")));
        lines.Add(new("insulation", result.InsulationClass is { } name ? new Message("bench-wire.insulation", name) : new Message("bench-wire.no-insulation")));
        lines.Add(new("fuse", result.HasFuse
            ? new Message("bench-wire.fuse", new Figure(result.LoadFuseAmps!.Value, "0.#"), new Figure(result.WireFuseAmps!.Value, "0.#"))
            : new Message("bench-wire.no-fuse")));
        if (question.AllowedVolts is not null)
        {
            lines.Add(new("smallest", result.Smallest.Length switch
            {
                0 => new Message("bench-wire.no-gauge", Gauges.Thickest),
                1 => result.Smallest[0].Say(),
                _ => new Message("bench-wire.or", result.Smallest[0].Say(), result.Smallest[1].Say()),
            }));
        }

        return new Answer(
            new Message(
                question.HasReturn ? "bench-wire.title-return" : "bench-wire.title", question.Gauge.Say(), new Figure(question.Metres, "0.##"),
                new Figure(question.Amps, "0.##"), new Figure(question.Celsius, "0.#")),
            [], lines.ToImmutable(), Judged(result),
            [
                question.Gauge.Awg is null ? new Message("bench-wire.by-class-five")
                    : new Message("bench-wire.by-awg", new Measure(100 * (BenchDefaults.Table["wire.stranding"] - 1), Unit.Percent).Say()),
                new Message("bench-wire.heat-source", BenchDefaults.Table.Say("fuse.continuous-share", Unit.Percent)),
            ]);
    }

    private static ImmutableArray<Message> Judged(WireResult result)
    {
        var judged = ImmutableArray.CreateBuilder<Message>();
        if (result.BearableAmps < result.Question.Amps)
        {
            judged.Add(new Message("bench-wire.too-thin"));
        }
        else if (!result.HasFuse)
        {
            judged.Add(new Message("bench-wire.fuse-too-large"));
        }

        if (result.Question.AllowedVolts is { } allowed)
        {
            judged.Add(new Message(result.Drop.Value <= allowed ? "bench-wire.drop-kept" : "bench-wire.drop-too-large"));
        }

        return judged.ToImmutable();
    }
}
