namespace Halfsplit.Simulation.Compiled;

/// <summary>Something laid on between two nodes: a jumper, a short, a test lamp, an in-line ammeter.</summary>
/// <param name="From">Node; −1 is the reference.</param>
/// <param name="To">Node; −1 is the reference.</param>
/// <param name="Ohms">Its resistance; for a lamp, hot.</param>
/// <param name="LampVolts">Rated volts if it is a filament lamp, else 0.</param>
internal readonly record struct Attachment(int From, int To, double Ohms, double LampVolts = 0);
