namespace Halfsplit.Circuits.Sheets.Tree;

/// <summary>A piece of the sheet's YAML with its place in the text.</summary>
internal abstract record SheetNode(SheetPosition Position);

/// <summary>A text; numbers and yes/no are texts too until someone asks.</summary>
/// <param name="Start">Index of its first character in the text.</param>
/// <param name="End">Index behind its last character.</param>
internal sealed record SheetText(SheetPosition Position, string Value, int Start, int End) : SheetNode(Position);

/// <summary>A list in square brackets or with dashes.</summary>
internal sealed record SheetList(SheetPosition Position, List<SheetNode> Items) : SheetNode(Position);

/// <summary>A key with its value.</summary>
internal readonly record struct SheetEntry(SheetText Key, SheetNode Value);

/// <summary>A map; keys are unique and stand in the order of the text.</summary>
internal sealed record SheetMap(SheetPosition Position, List<SheetEntry> Entries) : SheetNode(Position);
