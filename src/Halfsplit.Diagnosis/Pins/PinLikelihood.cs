namespace Halfsplit.Diagnosis.Pins;

/// <summary>
/// How likely a value is under an expectation. A slip (wrong pin, tip not touching) may show anything, so that no single reading is
/// decisive and the order of readings does not matter.
/// </summary>
internal static class PinLikelihood
{
    /// <summary>How often a reading is a slip.</summary>
    public static readonly double Slip = PinDefaults.Of("pin.slip");

    /// <summary>The lines on which a slip falls anywhere.</summary>
    private static readonly double Decades = PinDefaults.Of("pin.slip-decades"), Volts = PinDefaults.Of("pin.slip-volts");

    public static double Of(PinTest test, PinExpectation expectation, PinValue value)
    {
        var anything = Anything(test, value);
        return ReferenceEquals(expectation, PinExpectation.Anything) ? anything : ((1 - Slip) * Meant(expectation, value)) + (Slip * anything);
    }

    /// <summary>True where a value is more likely a slip than what was expected.</summary>
    public static bool IsSlip(PinTest test, PinExpectation expectation, PinValue value) =>
        !ReferenceEquals(expectation, PinExpectation.Anything) && (1 - Slip) * Meant(expectation, value) < Slip * Anything(test, value);

    private static double Meant(PinExpectation expectation, PinValue value) => (expectation, value) switch
    {
        (PinExpectation.Near near, { Number: { } number }) when double.IsFinite(number) =>
            Density((PinExpectation.Place(number, near.InDecades) - near.Mean) / near.Spread) / near.Spread,
        (PinExpectation.OneOf one, { Word: { } word }) => word == one.Word ? one.Share : word == one.Otherwise ? 1 - one.Share : 0,
        (not (PinExpectation.Near or PinExpectation.OneOf), { Number: double.PositiveInfinity }) => 1,
        _ => 0,
    };

    private static double Anything(PinTest test, PinValue value) => value switch
    {
        { Word: not null } => test.Setting == PinSetting.Power ? 1.0 / 3 : 0.5,
        { Number: double.PositiveInfinity } => 0.5,
        _ => 0.5 / (test.Setting == PinSetting.Ohms ? Decades : Volts),
    };

    private static double Density(double z) => Math.Exp(-0.5 * z * z) / Math.Sqrt(2 * Math.PI);
}
