using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>What every part has, whatever its kind.</summary>
/// <param name="Id">Name in the sheet: <c>K1</c>, <c>F19</c>.</param>
/// <param name="Name">Plain-language name; null to use the id.</param>
/// <param name="Place">Where it lives; null if not said (always reachable).</param>
/// <param name="Slot">Position in a fuse and relay box.</param>
/// <param name="Price">Price range of the part in the person's money; null: from the default table of its kind.</param>
/// <param name="Cautions">Cautions before this part is touched.</param>
/// <param name="Probe">False where no lead may ever go (sealed, airbag, high voltage).</param>
public sealed record PartNotes(
    string Id,
    string? Name,
    string? Place,
    string? Slot,
    ValueRange? Price,
    ImmutableArray<string> Cautions,
    bool Probe = true)
{
    public PartNotes(string id, string? name = null, string? place = null)
        : this(id, name, place, null, null, []) { }
}

/// <summary>A battery, fuse, connector, relay, switch, module, load or ground point.</summary>
public abstract record Part(PartNotes Notes)
{
    /// <summary>The part's name in the sheet.</summary>
    public string Id => Notes.Id;

    /// <summary>The sheet's word for this kind of part, e.g. <c>fuse</c>; keys of the data tables.</summary>
    public abstract string Kind { get; }

    /// <summary>The terminals the part has in any sheet, in a fixed order; connectors get theirs from the wiring.</summary>
    public abstract ImmutableArray<string> Terminals { get; }

    /// <summary>Entry and exit when a path runs through the part without naming terminals; null if it must name them.</summary>
    public virtual (string In, string Out)? PassThrough =>
        Terminals.Length == 2 ? (Terminals[0], Terminals[1]) : null;

    /// <summary>Can be pulled out of a socket and so has pins of its own beside its socket's terminals.</summary>
    public virtual bool IsPluggable => false;
}
