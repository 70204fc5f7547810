using Spectre.Console.Cli;

namespace Halfsplit.Cli.Settings;

public sealed class NextSettings : JobSettings
{
    [CommandOption("--why")]
    [Says("help.next-why")]
    public bool Why { get; init; }
}

public sealed class StatusSettings : JobSettings
{
    [CommandOption("-w|--why <SUSPECT>")]
    [Says("help.why")]
    public string? Why { get; init; }
}

public sealed class RecordSettings : JobSettings
{
    [CommandArgument(1, "<READING>")]
    [Says("help.reading")]
    public string[] Reading { get; init; } = [];

    [CommandOption("--check <ID>")]
    [Says("help.check")]
    public string? Check { get; init; }

    [CommandOption("--confirm")]
    [Says("help.confirm")]
    public bool Confirm { get; init; }
}

public sealed class WithdrawSettings : JobSettings
{
    [CommandOption("--number <NUMBER>")]
    [Says("help.number")]
    public int? Number { get; init; }

    [CommandOption("-n|--noticed <NAME>")]
    [Says("help.withdraw-noticed")]
    public string? Noticed { get; init; }

    [CommandOption("--bench <RESULT>")]
    [Says("help.withdraw-bench")]
    public string? Bench { get; init; }

    [CommandOption("--reason <TEXT>")]
    [Says("help.reason")]
    public string? Reason { get; init; }
}

/// <summary>Something noticed; without a name, all that can be said.</summary>
public sealed class NoticeSettings : VerbSettings
{
    [CommandArgument(0, "<JOB>")]
    [Says("help.job-or-sheet")]
    public string Job { get; init; } = "";

    [CommandArgument(1, "[NAME]")]
    [Says("help.noticed")]
    public string[] Name { get; init; } = [];

    [CommandOption("-c|--complaint <TEXT>")]
    [Says("help.complaint")]
    public string? Complaint { get; init; }
}

/// <summary>What the finished jobs of a folder teach.</summary>
public sealed class HistorySettings : VerbSettings
{
    [CommandArgument(0, "<FOLDER>")]
    [Says("help.folder")]
    public string Folder { get; init; } = "";
}

public sealed class SkipSettings : JobSettings
{
    [CommandOption("--check <ID>")]
    [Says("help.check")]
    public string? Check { get; init; }

    [CommandOption("--place [PLACE]")]
    [Says("help.place")]
    public FlagValue<string> Place { get; init; } = new();
}

public sealed class NoteSettings : JobSettings
{
    [CommandArgument(1, "<TEXT>")]
    [Says("help.text")]
    public string[] Text { get; init; } = [];
}

public sealed class HandOverSettings : JobSettings
{
    [CommandOption("--to <WHO>")]
    [Says("help.to")]
    public string? To { get; init; }

    [CommandOption("--reason <TEXT>")]
    [Says("help.hand-over-reason")]
    public string? Reason { get; init; }
}
