using Xunit;

namespace Halfsplit.Architecture.Tests.House;

/// <summary>Fails a test with every broken rule written out.</summary>
internal static class Broken
{
    public static void None(IEnumerable<string> sentences)
    {
        var all = sentences.ToList();
        Assert.True(all.Count == 0, string.Join('\n', all));
    }
}
