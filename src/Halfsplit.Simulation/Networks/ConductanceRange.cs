using System.Globalization;
using System.Runtime.CompilerServices;

namespace Halfsplit.Simulation.Networks;

/// <summary>
/// The values that the solver takes. Everyday circuits use 1e-10 to 1e4 S; the limits lie far outside and only make
/// sure that no product inside the elimination can overflow or vanish.
/// </summary>
public static class ConductanceRange
{
    /// <summary>The smallest conductance other than zero, in siemens.</summary>
    public const double Smallest = 1e-30;

    /// <summary>The largest conductance in siemens; also the largest injected current in amperes.</summary>
    public const double Largest = 1e30;

    /// <summary>A terminal's leak to the reference where nothing better is known: 1 GΩ.</summary>
    public const double DefaultLeak = 1e-9;

    private static readonly ulong SmallestBits = BitConverter.DoubleToUInt64Bits(Smallest);
    private static readonly ulong Width = BitConverter.DoubleToUInt64Bits(Largest) - SmallestBits;

    /// <summary>True for zero and for every value from <see cref="Smallest"/> to <see cref="Largest"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool Holds(double siemens) =>
        // Positive doubles sort like their bits, so one comparison rejects negative, infinite and undefined values.
        BitConverter.DoubleToUInt64Bits(siemens) - SmallestBits <= Width || siemens == 0;

    internal static void CheckLeaks(ReadOnlySpan<double> leaks)
    {
        for (var node = 0; node < leaks.Length; node++)
        {
            if (!Holds(leaks[node]))
                Refuse("leak of node", node, leaks[node], nameof(leaks));
        }
    }

    internal static void CheckCurrents(ReadOnlySpan<double> injected)
    {
        for (var node = 0; node < injected.Length; node++)
        {
            if (!(Math.Abs(injected[node]) <= Largest))
                Refuse("current into node", node, injected[node], nameof(injected));
        }
    }

    internal static void Refuse(string what, int index, double value, string argument) =>
        throw new ArgumentException(
            string.Create(CultureInfo.InvariantCulture, $"The {what} {index} is {value:R}, which no network can have."),
            argument);
}
