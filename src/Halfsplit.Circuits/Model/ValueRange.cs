namespace Halfsplit.Circuits.Model;

/// <summary>A closed range, in the unit of whatever it belongs to.</summary>
public readonly record struct ValueRange(double Low, double High)
{
    public bool Contains(double value) => value >= Low && value <= High;

    public double Middle => 0.5 * (Low + High);
}
