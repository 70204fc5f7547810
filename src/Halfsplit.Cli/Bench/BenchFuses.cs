using System.Collections.Immutable;
using Halfsplit.Bench;
using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Fuses;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Bench;

/// <summary>A fuse: blown or whole, and the current through it; a box of them.</summary>
public static class BenchFuses
{
    private static readonly Dictionary<string, FuseLook> Looks = new(StringComparer.OrdinalIgnoreCase)
    {
        ["whole"] = FuseLook.Whole, ["blown"] = FuseLook.Blown, ["unclear"] = FuseLook.Unclear,
    };

    public static int Check(Terminal terminal, FuseSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (settings.Look is { } look && !Looks.ContainsKey(look))
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("bench.bad-look", look, string.Join(", ", Looks.Keys)));
        }

        var tabs = settings.Tabs is { } typed ? TypedInputs.TwoVolts(typed) : null;
        if (settings.Tabs is not null && tabs is null)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("bench.bad-tabs", settings.Tabs));
        }

        var signs = new FuseSigns(settings.Look is null ? null : Looks[settings.Look], settings.Ohms, tabs?.First, tabs?.Second);
        return AnswerPage.Show(terminal, settings, FuseCheck.Of(signs).Then(FuseCheck.Answer));
    }

    public static int Drain(Terminal terminal, DrainSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var fuse = FuseSpec.Parse(string.Join(' ', settings.Fuse));
        return AnswerPage.Show(
            terminal, settings,
            fuse.IsGood
                ? FuseDrain.Of(fuse.Result!, settings.Millivolts * 1e-3, settings.StepMillivolts * 1e-3).Then(FuseDrain.Answer)
                : Outcome.Wrong<Answer>(fuse.Problems));
    }

    public static int Hunt(Terminal terminal, DrainHuntSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var fuses = settings.Fuses.Select(HuntFuse.Parse).ToImmutableArray();
        var wrong = fuses.SelectMany(f => f.Problems).ToImmutableArray();
        var question = new HuntQuestion(
            [.. fuses.Select(f => f.Result).OfType<HuntFuse>()], settings.TotalAmps,
            settings.AllowedAmps ?? BenchDefaults.Table["drain.allowed-amps"], settings.StepMillivolts * 1e-3);
        return AnswerPage.Show(
            terminal, settings,
            wrong.Length > 0 ? Outcome.Wrong<Answer>(wrong) : DrainHunt.Of(question).Then(DrainHuntAnswer.Of));
    }
}
