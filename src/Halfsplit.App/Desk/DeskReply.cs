using Halfsplit.App.Views;
using Halfsplit.Bench.Motors;

namespace Halfsplit.App.Desk;

/// <summary>What came of a request. Only the fields of the verb are set.</summary>
public sealed record DeskReply
{
    /// <summary>What has to be kept before anything of this reply is shown.</summary>
    public KeepOrder? Keep { get; init; }

    /// <summary>Why it was not done; nothing was kept.</summary>
    public string? Problem { get; init; }

    /// <summary>It could not be kept or done at all: the job has to be opened anew from what is kept.</summary>
    public bool IsLost { get; init; }

    public JobView? Job { get; init; }
    public SavedView? Saved { get; init; }
    public DoubtView? Doubt { get; init; }
    public StepView? Step { get; init; }

    /// <summary>The step is what the engine asks for, and not only a first sight.</summary>
    public bool IsSure { get; init; } = true;

    /// <summary>There is more of what was done a piece of.</summary>
    public bool HasMore { get; init; }

    public WhyView? Why { get; init; }
    public RankedView[]? Ranked { get; init; }
    public OpeningView? Opening { get; init; }
    public NoticeView[]? Noticeable { get; init; }
    public CircuitView? Circuit { get; init; }
    public PartStateView? Part { get; init; }
    public BetweenView? Between { get; init; }
    public PutBackView? PutBack { get; init; }

    /// <summary>The parts that a result of the bench can be about, in the sheet's order.</summary>
    public Views.BenchPartView[]? Parts { get; init; }

    /// <summary>What the sheet's only motor draws at work; null where it has none or several.</summary>
    public SheetRating? Rated { get; init; }

    /// <summary>A result of the bench that does not fit the job's own readings: which, and what both say. Nothing was kept.</summary>
    public string? Misfit { get; init; }

    /// <summary>A whole page of HTML.</summary>
    public ReportView? Report { get; init; }

    /// <summary>What the next step would be after each answer that may come; see <see cref="AheadView"/>.</summary>
    public AheadView? Ahead { get; init; }

    /// <summary>Milliseconds of engine work.</summary>
    public double Worked { get; init; }
}

/// <summary>Lines to be added to a job.</summary>
/// <param name="Job">The job's id.</param>
/// <param name="After">The last event the writer knows; null for a new job.</param>
public sealed record KeepOrder(string Job, string? After, KeptLine[] Lines);

/// <summary>An event's id and its line.</summary>
public sealed record KeptLine(string Id, string Line);

/// <summary>One answer that may come to the check that is asked, and the step that would follow.</summary>
/// <param name="Low">For numbers, in SI units: where this outcome begins; null without a limit.</param>
/// <param name="High">Where it ends.</param>
/// <param name="Word">For words: the answer's id, <c>OL</c>, or <c>skip</c> for leaving the check out; null for numbers.</param>
public sealed record AheadView(int Index, int Of, double? Low, double? High, string? Word, StepView Step);
