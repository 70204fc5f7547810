using Halfsplit.Circuits.Messages;

namespace Halfsplit.Circuits;

/// <summary>The texts of this project.</summary>
public static class CircuitTexts
{
    public static TextSource Source { get; } = new("Halfsplit.Circuits.Texts", typeof(CircuitTexts).Assembly);
}
