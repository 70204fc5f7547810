namespace Halfsplit.Diagnosis.Pins;

/// <summary>How two pins are looked at.</summary>
public enum PinSetting
{
    /// <summary>Ohms; infinite for OL.</summary>
    Ohms,

    /// <summary>Beeps or not.</summary>
    Continuity,

    /// <summary>Volts that the meter's diode setting shows; infinite for OL.</summary>
    Diode,

    /// <summary>Volts against the body.</summary>
    Volts,

    /// <summary>Twelve volts through a small lamp, plus on the first pin: the lamp stays dark, lights up, or something clicks.</summary>
    Power,
}

/// <summary>The power that lies on a pair of pins, through a small lamp, while two others are measured.</summary>
public readonly record struct PinPower(string Plus, string Minus);

/// <summary>One measurement: two pins, the setting, and the power that lies on two others.</summary>
/// <param name="Second">The other pin, or the word for the body.</param>
/// <param name="Condition">What the car is doing; null where the puzzle knows no conditions, and for ohms, which are measured at rest.</param>
public sealed record PinTest(PinSetting Setting, string First, string Second, PinPower? Power = null, string? Condition = null)
{
    public const string Body = "body";

    /// <summary>As a person types it: <c>ohms 1 2</c>, <c>power 3 4</c>, <c>ohms 1 2 with 3 4</c>, <c>volts 1 body in key on</c>.</summary>
    public string Id => $"{Word} {First} {Second}" + (Power is { } power ? $" with {power.Plus} {power.Minus}" : "") + (Condition is null ? "" : $" in {Condition}");

    private string Word => Setting switch
    {
        PinSetting.Ohms => "ohms",
        PinSetting.Continuity => "beep",
        PinSetting.Diode => "diode",
        PinSetting.Volts => "volts",
        _ => "power",
    };
}

/// <summary>What a measurement showed: a number, or a word.</summary>
/// <param name="Number">Ohms or volts; positive infinity for OL; null for a word.</param>
public readonly record struct PinValue(double? Number, PinWord? Word)
{
    public static PinValue Of(double number) => new(number, null);

    public static PinValue Of(PinWord word) => new(null, word);
}

/// <summary>What is heard or seen in place of a number.</summary>
public enum PinWord { Beeps, Silent, Clicks, Bright, Dark }
