using Halfsplit.Diagnosis.Checks;

namespace Halfsplit.Diagnosis.Noticing;

/// <summary>What a thing noticed speaks about.</summary>
public enum NoticedAbout { Nothing, Fuse, Relay, Load, Ground, Joint, Part, Place, Output, Module, Battery, Alternator, Motor, Diode }

/// <summary>
/// Something that people notice before they measure, and how far it can be believed: a row of
/// <c>data/complaint-evidence.csv</c>; or what the bench found of a part, a row of <c>data/part-findings.csv</c>.
/// </summary>
/// <param name="Name">What the person says, in kebab case: <c>no-sound</c>.</param>
/// <param name="About">The sort of thing it names.</param>
/// <param name="MayLeaveOut">It may be said without naming one.</param>
/// <param name="Sign">What has to be so in the car; simulated, or a share by kind of fault.</param>
/// <param name="IfSo">How likely it is told where it is so; between 0 and 1.</param>
/// <param name="Otherwise">How likely it is told where it is not so; between 0 and 1.</param>
/// <param name="Group">Of one group only one can be said about one thing; empty: no group.</param>
/// <param name="Includes">A weaker statement that this one includes, and that then counts no more; or empty.</param>
/// <param name="Source">Where the numbers come from.</param>
public sealed record NoticedKind(
    string Name, NoticedAbout About, bool MayLeaveOut, string Sign, double IfSo, double Otherwise, string Group,
    string Includes, string Source)
{
    /// <summary>Found of a part on the bench, and not noticed before measuring.</summary>
    public bool IsFromBench { get; init; }

    /// <summary>The check that asks the same, and that is asked no more; null where there is none.</summary>
    public CheckSubject? InsteadOf { get; init; }

    public bool Equals(NoticedKind? other) => other is not null && Name == other.Name;

    public override int GetHashCode() => Name.GetHashCode(StringComparison.Ordinal);
}

/// <summary>Something that was noticed.</summary>
/// <param name="Kind">What.</param>
/// <param name="About">The part, place or output it names; null where it names none.</param>
public sealed record Noticed(NoticedKind Kind, string? About = null) : IComparable<Noticed>
{
    /// <summary>
    /// The ohms that the bench measured of it; null where none were. A fault of the same part is weighed by its own ohms. They are no
    /// part of what makes two findings the same.
    /// </summary>
    public double? Ohms { get; init; }

    public bool Equals(Noticed? other) => other is not null && Kind.Equals(other.Kind) && About == other.About;

    public override int GetHashCode() => HashCode.Combine(Kind, About);

    /// <summary>In the order of names, then of what they are about: one order whatever order they were said in.</summary>
    public int CompareTo(Noticed? other) => other is null ? 1
        : string.CompareOrdinal(Kind.Name, other.Kind.Name) is var order and not 0 ? order
        : string.CompareOrdinal(About, other.About);

    /// <summary>As people type it: <c>fuse-blew:F19</c>.</summary>
    public override string ToString() => About is null ? Kind.Name : $"{Kind.Name}:{About}";

    public static bool operator <(Noticed left, Noticed right) => Comparer<Noticed>.Default.Compare(left, right) < 0;

    public static bool operator <=(Noticed left, Noticed right) => Comparer<Noticed>.Default.Compare(left, right) <= 0;

    public static bool operator >(Noticed left, Noticed right) => Comparer<Noticed>.Default.Compare(left, right) > 0;

    public static bool operator >=(Noticed left, Noticed right) => Comparer<Noticed>.Default.Compare(left, right) >= 0;
}
