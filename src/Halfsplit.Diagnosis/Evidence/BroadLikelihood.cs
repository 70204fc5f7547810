using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Evidence;

/// <summary>
/// The probability of an outcome when nothing definite predicts it: for "none of these", for slips, for chatter.
/// Much of it lies where readings in a car mostly lie, near nothing and near battery volts.
/// </summary>
internal static class BroadLikelihood
{
    private const double OverLimitShare = 0.25;

    public static double Log(Check check, ReadingValue value, double step, double nominalVolts) => value switch
    {
        ReadingParse.Number number => Math.Log(Number(check.Probe.Instrument, number.Value, step, nominalVolts / 12)),
        ReadingParse.OverLimit => Math.Log(OverLimitShare),
        _ => -Math.Log(Math.Max(1, check.Answers.Length)),
    };

    private static double Number(Instrument instrument, double value, double step, double scale) => Math.Min(
        1,
        step * instrument switch
        {
            Instrument.Ohms => (1 - OverLimitShare) / (Math.Log(Meter.OverLimitOhms / 0.1) * Math.Max(0.1, Math.Abs(value))),
            Instrument.AmpsClamp or Instrument.AmpsInline =>
                (0.5 * Density(value, 0, 0.15)) + (0.5 / (40 * scale)),
            _ => (0.5 / (16 * scale)) + (0.25 * Density(value, 0, 0.15 * scale))
                + (0.25 * Density(value, 12.4 * scale, 0.4 * scale)),
        });

    private static double Density(double value, double mean, double spread)
    {
        var z = (value - mean) / spread;
        return Math.Exp(-0.5 * z * z) / (spread * Math.Sqrt(2 * Math.PI));
    }
}
