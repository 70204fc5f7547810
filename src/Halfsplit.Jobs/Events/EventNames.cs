using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Jobs.Events;

/// <summary>The words of the job file. They are part of the format and never change.</summary>
internal static class EventNames
{
    public const string Opened = "job-opened";
    public const string Reading = "reading-taken";
    public const string Withdrawn = "reading-withdrawn";
    public const string Skipped = "check-skipped";
    public const string Noticed = "thing-noticed";
    public const string Found = "part-found";
    public const string Note = "note-written";
    public const string Described = "job-described";
    public const string Repair = "repair-done";
    public const string Proof = "proof-taken";
    public const string PutBack = "put-back-done";
    public const string HandedOver = "handed-over";
    public const string Closed = "job-closed";

    public static readonly (string Name, SkipReason Value)[] SkipReasons =
        [("cannot-reach", SkipReason.CannotReach), ("not-sure", SkipReason.NotSure), ("no-tool", SkipReason.NoTool)];

    public static readonly (string Name, JobOutcome Value)[] Outcomes =
        [("proven", JobOutcome.Proven), ("handed-over", JobOutcome.HandedOver), ("given-up", JobOutcome.GivenUp)];

    public static readonly (string Name, Quantity Value)[] Quantities =
    [
        ("volts", Quantity.Volts), ("ohms", Quantity.Ohms), ("amperes", Quantity.Amperes), ("duty", Quantity.Duty),
    ];

    public static string NameOf<T>((string Name, T Value)[] names, T value)
    {
        foreach (var (name, candidate) in names)
        {
            if (EqualityComparer<T>.Default.Equals(candidate, value)) return name;
        }

        throw new ArgumentOutOfRangeException(nameof(value), value, "Not a value of the job file.");
    }
}
