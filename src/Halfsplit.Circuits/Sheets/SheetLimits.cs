namespace Halfsplit.Circuits.Sheets;

/// <summary>How large a sheet may be; far above any real one, low enough that no input can eat time or memory.</summary>
public static class SheetLimits
{
    /// <summary>Characters in the text.</summary>
    public const int Characters = 1_000_000;

    /// <summary>Maps and lists within each other.</summary>
    public const int Depth = 12;

    /// <summary>Keys, values, maps and lists in all.</summary>
    public const int Nodes = 50_000;

    /// <summary>Parts.</summary>
    public const int Parts = 500;

    /// <summary>Wiring paths.</summary>
    public const int Paths = 2_000;

    /// <summary>Items in one wiring path.</summary>
    public const int PathItems = 200;

    /// <summary>Items in all wiring paths together.</summary>
    public const int AllItems = 10_000;

    /// <summary>Conditions, places, complaints: each.</summary>
    public const int Others = 200;

    /// <summary>Problems reported; more would help nobody.</summary>
    public const int Problems = 200;
}
