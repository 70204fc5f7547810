using Halfsplit.Circuits.Tests.Adapting;

namespace Halfsplit.Circuits.Tests.Docs;

/// <summary>Every change in <c>docs/adapting.md</c> can be made to the sheet that its session adapts.</summary>
public sealed class AdaptingDocTests
{
    public static TheoryData<string> Changes => [.. Lines()];

    [Theory]
    [MemberData(nameof(Changes))]
    public void A_documented_change_is_possible(string text) => Adapted.Of("pump-feed", text);

    private static string[] Lines()
    {
        var text = DocsFile.Read("adapting.md").Replace("\r\n", "\n", StringComparison.Ordinal);
        const string Begin = "<!-- changes -->\n```\n", End = "```\n<!-- /changes -->";
        var from = text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        return text[from..text.IndexOf(End, StringComparison.Ordinal)].Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
