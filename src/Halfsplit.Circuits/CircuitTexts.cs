using System.Resources;

namespace Halfsplit.Circuits;

/// <summary>The texts of this project.</summary>
public static class CircuitTexts
{
    public static ResourceManager Source { get; } = new("Halfsplit.Circuits.Texts", typeof(CircuitTexts).Assembly);
}
