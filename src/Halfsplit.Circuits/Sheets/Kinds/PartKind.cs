using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets.Kinds;

/// <summary>How parts of one kind are read from and written to a sheet.</summary>
/// <param name="word">What stands behind <c>kind:</c>.</param>
internal abstract class PartKind(string word)
{
    public string Word => word;

    /// <summary>True if this kind writes the part.</summary>
    public abstract bool Describes(Part part);

    /// <summary>Reads the keys of this kind; the common ones are in the notes already.</summary>
    public abstract Part Read(MapReader map, PartNotes notes, ComponentDefaults defaults);

    /// <summary>Writes the keys of this kind.</summary>
    public abstract void Write(Part part, MapWriter map, ComponentDefaults defaults);
}

/// <summary>A kind whose parts have a type of their own.</summary>
internal abstract class PartKind<TPart>(string word) : PartKind(word)
    where TPart : Part
{
    public override bool Describes(Part part) => part is TPart typed && Describes(typed);

    public sealed override void Write(Part part, MapWriter map, ComponentDefaults defaults) =>
        Write((TPart)part, map, defaults);

    protected virtual bool Describes(TPart part) => true;

    protected abstract void Write(TPart part, MapWriter map, ComponentDefaults defaults);
}
