using System.Collections.Immutable;
using Halfsplit.Circuits.Sheets;
using Xunit;

namespace Halfsplit.Simulation.Tests.Sheets;

/// <summary>
/// Shipped sheets for tests that settle thousands of cars: those with the most in them. With the environment variable
/// HALFSPLIT_WHOLE_SHELF=1 it is every sheet, which takes many minutes.
/// </summary>
internal static class ShelfChoice
{
    // Two relays in a row and a computer; a motor behind a resistor; lamps on one ground; an alternator; diodes; 24 V.
    private static readonly ImmutableArray<string> Few =
        ["pump-feed", "cooling-fan", "headlamps", "charging", "motorcycle-start", "truck-tail-lamps-24v"];

    private static readonly bool IsWhole = Environment.GetEnvironmentVariable("HALFSPLIT_WHOLE_SHELF") == "1";

    /// <summary>The chosen sheets.</summary>
    public static ImmutableArray<string> Names { get; } = IsWhole ? ShippedSheets.Names : Few;

    /// <summary>The first three of them, for what takes longest.</summary>
    public static ImmutableArray<string> Main { get; } = IsWhole ? ShippedSheets.Names : Few[..3];

    public static TheoryData<string> Theory => [.. Names];
}
