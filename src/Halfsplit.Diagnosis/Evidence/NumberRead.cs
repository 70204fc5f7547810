namespace Halfsplit.Diagnosis.Evidence;

/// <summary>A number as it was read.</summary>
/// <param name="Value">In the SI unit.</param>
/// <param name="Step">The display's step, or the last digit typed if that is coarser.</param>
/// <param name="LogBroad">Log probability of this count when nothing definite is known.</param>
/// <param name="Spread">What it varies by by itself, one standard deviation, if it is read again.</param>
/// <param name="Pin">Readings of the same check have the same number here: a wrong pin may be taken again. −1: none.</param>
internal readonly record struct NumberRead(double Value, double Step, double LogBroad, double Spread, int Pin = -1);
