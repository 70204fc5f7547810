using System.Collections.Immutable;
using System.Text;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Sheets;

/// <summary>The sheets of <c>sheets/</c>, embedded in the assembly.</summary>
public static class ShippedSheets
{
    private const string Folder = "sheets/";
    private const string Ending = ".yaml";

    /// <summary>Names without folder and ending, in alphabetical order.</summary>
    public static ImmutableArray<string> Names { get; } =
        [.. typeof(ShippedSheets).Assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith(Folder, StringComparison.Ordinal) && n.EndsWith(Ending, StringComparison.Ordinal))
            .Select(n => n[Folder.Length..^Ending.Length])
            .Order(StringComparer.Ordinal)];

    /// <summary>The sheet as it stands in its file; null if there is none of this name.</summary>
    public static string? Text(string name)
    {
        using var stream = typeof(ShippedSheets).Assembly.GetManifestResourceStream(Folder + name + Ending);
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    /// <summary>The circuit of a shipped sheet.</summary>
    /// <exception cref="KeyNotFoundException">There is no shipped sheet of this name.</exception>
    public static Circuit Load(string name)
    {
        var text = Text(name) ?? throw new KeyNotFoundException($"There is no shipped sheet {name}.");
        return SheetReader.Read(text).Circuit
            ?? throw new InvalidOperationException($"The shipped sheet {name} has errors.");
    }
}
