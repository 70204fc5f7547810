using System.Globalization;
using System.Runtime.CompilerServices;

namespace Halfsplit.Simulation.Networks;

/// <summary>
/// The values that the solver takes. Everyday circuits use 1e-10 to 1e4 S; the limits lie far outside and only make
/// sure that no product inside the elimination can overflow or vanish.
/// </summary>
public static class ConductanceRange
{
    /// <summary>The smallest conductance in siemens that counts; what is less is zero.</summary>
    public const double Smallest = 1e-30;

    /// <summary>The largest conductance in siemens; also the largest injected current in amperes.</summary>
    public const double Largest = 1e30;

    /// <summary>A terminal's leak to the reference where nothing better is known: 1 GΩ.</summary>
    public const double DefaultLeak = 1e-9;

    private static readonly ulong SmallestBits = BitConverter.DoubleToUInt64Bits(Smallest);
    private static readonly ulong Width = BitConverter.DoubleToUInt64Bits(Largest) - SmallestBits;

    /// <summary>True for every value from zero to <see cref="Largest"/>.</summary>
    public static bool Holds(double siemens) => siemens is >= 0 and <= Largest;

    /// <summary>The value that counts: itself, or zero if it is less than <see cref="Smallest"/>.</summary>
    /// <exception cref="ArgumentException">The value is negative, not a number, or more than <see cref="Largest"/>.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Take(double siemens, string what, int index, string argument) =>
        // Positive doubles sort like their bits, so one comparison settles almost every value.
        BitConverter.DoubleToUInt64Bits(siemens) - SmallestBits <= Width ? siemens : TakeRare(siemens, what, index, argument);

    internal static void CheckCurrents(ReadOnlySpan<double> injected)
    {
        for (var node = 0; node < injected.Length; node++)
        {
            if (!(Math.Abs(injected[node]) <= Largest))
                Refuse("current into node", node, injected[node], nameof(injected));
        }
    }

    private static double TakeRare(double siemens, string what, int index, string argument)
    {
        if (!Holds(siemens))
            Refuse(what, index, siemens, argument);
        return 0;
    }

    private static void Refuse(string what, int index, double value, string argument) =>
        throw new ArgumentException(
            string.Create(CultureInfo.InvariantCulture, $"The {what} {index} is {value:R}, which no network can have."),
            argument);
}
