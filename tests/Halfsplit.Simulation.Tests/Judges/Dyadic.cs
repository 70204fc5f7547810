using System.Numerics;

namespace Halfsplit.Simulation.Tests.Judges;

/// <summary>A whole number times a power of two: what every double is, and what sums and products of doubles stay.</summary>
internal readonly record struct Dyadic(BigInteger Whole, int Power)
{
    public static Dyadic Zero => new(BigInteger.Zero, 0);

    public static Dyadic Of(double value)
    {
        if (value == 0)
        {
            return Zero;
        }

        var power = Math.ILogB(value) - 52;
        return new Dyadic(new BigInteger(Math.ScaleB(value, -power)), power);
    }

    public static Dyadic operator *(Dyadic a, Dyadic b) => new(a.Whole * b.Whole, a.Power + b.Power);

    public static Dyadic operator +(Dyadic a, Dyadic b)
    {
        var power = Math.Min(a.Power, b.Power);
        return new Dyadic((a.Whole << (a.Power - power)) + (b.Whole << (b.Power - power)), power);
    }

    public static Dyadic operator -(Dyadic a, Dyadic b) => a + new Dyadic(-b.Whole, b.Power);

    public Dyadic Size => new(BigInteger.Abs(Whole), Power);

    public bool IsAtLeast(Dyadic other) => (this - other).Whole.Sign >= 0;

    /// <summary>Rounded; 0 below the range of doubles.</summary>
    public double Rounded
    {
        get
        {
            var extra = Math.Max(0, (int)Whole.GetBitLength() - 64);
            return Math.ScaleB((double)(Whole >> extra), Power + extra);
        }
    }
}
