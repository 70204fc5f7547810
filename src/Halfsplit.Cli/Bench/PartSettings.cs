using System.Collections.Immutable;
using Halfsplit.Cli.Settings;
using Spectre.Console.Cli;

namespace Halfsplit.Cli.Bench;

/// <summary>An aid that speaks of a part, so that a job can take its result as evidence.</summary>
public abstract class PartSettings : VerbSettings
{
    [CommandOption("--job <JOB>")]
    [Says("help-bench.job")]
    public string? Job { get; init; }

    [CommandOption("--part <PART>")]
    [Says("help-bench.part")]
    public string? Part { get; init; }

    [CommandOption("--confirm")]
    [Says("help-bench.confirm")]
    public bool Confirm { get; init; }

    /// <summary>The aid's name and what it was told, as typed; the job itself left out.</summary>
    public ImmutableArray<string> Typed { get; set; } = [];

    /// <summary>Of the whole command line: what comes after <c>bench</c>, without the options of the job.</summary>
    public static ImmutableArray<string> TypedOf(IReadOnlyList<string> arguments)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        var typed = ImmutableArray.CreateBuilder<string>();
        for (var i = 1; i < arguments.Count; i++)
        {
            if (arguments[i] is "--job" or "--part" or "--language")
            {
                i++;
            }
            else if (arguments[i] is not ("--json" or "--confirm"))
            {
                typed.Add(arguments[i]);
            }
        }

        return typed.ToImmutable();
    }
}
