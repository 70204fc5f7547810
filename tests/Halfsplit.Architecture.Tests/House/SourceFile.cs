namespace Halfsplit.Architecture.Tests.House;

/// <summary>A text file of the repository.</summary>
/// <param name="Path">From the root, with forward slashes.</param>
internal sealed record SourceFile(string Path, string Text)
{
    public string Name => System.IO.Path.GetFileNameWithoutExtension(Path);

    /// <summary>Lines as an editor counts them: a last line without an end still counts.</summary>
    public int Lines { get; } = Text.Length == 0 ? 0 : Text.TrimEnd('\n').Count(letter => letter == '\n') + 1;
}
