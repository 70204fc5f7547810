namespace Halfsplit.App.Views;

/// <summary>A job as the screens show it. Texts are already in the person's language.</summary>
/// <param name="Stands"><c>going-on</c>, <c>proven</c>, <c>handed-over</c> or <c>given-up</c>.</param>
/// <param name="Minutes">By the engine's table of times.</param>
/// <param name="Doubts">What is doubtful, in sentences.</param>
public sealed record JobView(
    string Id, string Title, string Summary, string Complaint, string Vehicle, string Stands, string Opened, double Minutes,
    EntryView[] Entries, SuspectView[] Suspects, string? OtherSuspects, string[] Doubts, string[] Noticed, string[] Notes,
    string[] Problems, string[] Cautions)
{
    /// <summary>What was found of parts on the bench, in sentences.</summary>
    public string[] Bench { get; init; } = [];

    public bool IsDone => Stands != "going-on";

    /// <summary>A name for a file of this job: its day, and the end of its id.</summary>
    public string FileName(string ending) => $"{Opened[..10]}-{Id[^6..].ToLowerInvariant()}.{ending}";
}

/// <summary>A reading, proof, repair, skip or putting back that counts.</summary>
/// <param name="Kind"><c>reading</c>, <c>proof</c>, <c>repair</c>, <c>skip</c> or <c>put-back</c>.</param>
public sealed record EntryView(string Id, int Number, string Kind, string Title, string Value, bool IsDoubtful);

/// <summary>A suspect with its odds.</summary>
/// <param name="Odds">0 to 1, never quite either.</param>
/// <param name="Was">The odds before the last answer, in words; null where they read the same.</param>
public sealed record SuspectView(string Id, string Name, double Odds, string OddsText, string? Was);

/// <summary>What a reading did.</summary>
/// <param name="Text">The reading as it was saved.</param>
/// <param name="Cleared">Suspects brought down to next to nothing.</param>
/// <param name="Carried">What it showed to carry current, in sentences.</param>
/// <param name="NotCleared">What it could not clear, in sentences.</param>
/// <param name="IsWhole">What it did is told too, not only that it is kept.</param>
/// <param name="Number">The number in SI units; null for words.</param>
/// <param name="Word">The answer's id, or <c>OL</c>; null for numbers.</param>
public sealed record SavedView(
    string Text, string[] Cleared, string? MoreCleared, string[] Carried, string[] NotCleared, bool IsWhole, double? Number, string? Word);

/// <summary>A doubtful answer is asked back.</summary>
/// <param name="Question">Why.</param>
/// <param name="Meant">What would be recorded.</param>
/// <param name="Others">What else may have been meant.</param>
public sealed record DoubtView(string Question, string Meant, MeaningView[] Others);

/// <summary>A reading that may have been meant.</summary>
/// <param name="Typed">As it can be recorded.</param>
/// <param name="Shown">As people read it.</param>
public sealed record MeaningView(string Typed, string Shown);

/// <summary>A part that a result of the bench can be about.</summary>
/// <param name="Id">Its name in the sheet.</param>
/// <param name="Text">The same with what it is.</param>
public sealed record BenchPartView(string Id, string Text);
