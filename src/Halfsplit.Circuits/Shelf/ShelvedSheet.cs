using System.Collections.Immutable;

namespace Halfsplit.Circuits.Shelf;

/// <summary>A shipped sheet as the shelf shows it, without reading its circuit.</summary>
/// <param name="Name">The sheet's name.</param>
/// <param name="System">Code of the system it belongs to: <c>fuel</c>, <c>lights</c>.</param>
/// <param name="NominalVolts">12 or 24.</param>
/// <param name="Title">One line.</param>
/// <param name="Summary">A sentence or two.</param>
/// <param name="Words">Other words people have for it, in any language.</param>
public sealed record ShelvedSheet(
    string Name, string System, int NominalVolts, string Title, string Summary, ImmutableArray<string> Words);
