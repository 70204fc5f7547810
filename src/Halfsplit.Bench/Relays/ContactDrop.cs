using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Noticing;

namespace Halfsplit.Bench.Relays;

/// <summary>How a relay's contact stands.</summary>
public enum ContactState { Good, Worn, Bad }

/// <param name="ShareVolts">What it would drop at the amps that the limits are given for.</param>
public sealed record ContactResult(double Volts, double Amps, double Ohms, double ShareVolts, ContactState State);

/// <summary>Judges a contact by its drop under a real load: a click proves the coil, never the contact.</summary>
public static class ContactDrop
{
    public static Outcome<ContactResult> Of(double volts, double amps)
    {
        var limits = new InputLimits()
            .Within("contact-drop", volts, "contact-drop", Unit.Volt)
            // A test lamp's trickle finds every contact good.
            .Within("load-current", amps, BenchDefaults.Table["contact.least-amps"], BenchDefaults.Table.RangeOf("limit.load-current").High, Unit.Amp);
        if (!limits.AreKept)
        {
            return Outcome.Wrong<ContactResult>(limits.Problems);
        }

        var share = volts / amps * BenchDefaults.Table["contact.limit-amps"];
        return Outcome.Of(new ContactResult(
            volts, amps, volts / amps, share,
            share <= BenchDefaults.Table["contact.new-volts"] ? ContactState.Good
                : share <= BenchDefaults.Table["contact.used-volts"] ? ContactState.Worn : ContactState.Bad));
    }

    public static Answer Answer(ContactResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        // More than the supply has no contact can drop: at those amps the load would not run at all.
        AnswerLine[] share = result.ShareVolts > BenchDefaults.Usual("supply") ? []
            : [new("drop", result.ShareVolts, Unit.Volt, new Measure(BenchDefaults.Table["contact.limit-amps"], Unit.Amp).ToString())];
        return new Answer(
            new Message("bench-contact.title", new Measure(result.Volts, Unit.Volt).Say(), new Measure(result.Amps, Unit.Amp).Say()),
            [new Message("bench-caution.live")],
            [new("resistance", result.Ohms, Unit.Ohm), new("loss", result.Volts * result.Amps, Unit.Watt), .. share],
            [
                new Message(result.State switch
                {
                    ContactState.Good => "bench-contact.good",
                    ContactState.Worn => "bench-contact.worn",
                    _ => "bench-contact.bad",
                }),
            ],
            [
                new Message(
                    "bench-contact.source", BenchDefaults.Table.Say("contact.new-volts", Unit.Volt), BenchDefaults.Table.Say("contact.used-volts", Unit.Volt),
                    BenchDefaults.Table.Say("contact.limit-amps", Unit.Amp)),
            ])
        {
            Measured = [new(BenchQuantity.ContactOhms, result.Ohms)],
            Found = result.State switch
            {
                ContactState.Good => "relay-contact-good",
                ContactState.Bad => "relay-contact-bad",
                _ => null,
            },
        };
    }
}
