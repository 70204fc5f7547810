using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench;

/// <summary>The texts of this project.</summary>
public static class BenchTexts
{
    public static TextSource Source { get; } = new("Halfsplit.Bench.Texts", typeof(BenchTexts).Assembly);
}
