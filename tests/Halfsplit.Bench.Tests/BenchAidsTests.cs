using System.Collections.Immutable;
using System.Text;
using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Forms;
using Halfsplit.Circuits.Messages;
using Xunit;

namespace Halfsplit.Bench.Tests;

/// <summary>Every aid as a form: filled in by hand it answers, and what is missing or no number is told.</summary>
public sealed class BenchAidsTests
{
    /// <summary>Aid, what is typed as NAME=TEXT (a choice and what is usual stand there already), and a judgement or a line that comes of it.</summary>
    public static TheoryData<string, string[], string> Filled => new()
    {
        { "wire", ["gauge=2.5", "length=4,2", "amps=8", "return=true", "allowed-drop=300 mV"], "resistance" },
        { "drop", ["piece=fuse 15A", "piece=connector = 0.3", "amps=8"], "total-expected" },
        { "fuse", ["ohms=OL", "look=blown"], "bench-fuse.blown" },
        { "drain", ["fuse=10A mini", "fuse-drop=0,4"], "current" },
        { "drain-hunt", ["hunt-fuse=F1 10A mini = 0.1", "hunt-fuse=F7 20A", "total=0.38"], "" },
        { "relay", ["pins=1,2,3,4", "reading=ohms 1 2 = 85"], "perhaps" },
        { "cavities", ["cavities=1,2", "function=feed: 11-14 V", "reading=volts 1 body = 12,1"], "perhaps" },
        { "coil", ["coil-ohms=85", "supply=20"], "bench-coil.harmful" },
        { "contact", ["contact-drop=180", "load-current=6"], "bench-contact.worn" },
        { "battery", ["rest-volts=12,45", "battery-type=agm"], "charge" },
        { "two-loads", ["light-volts=12.5", "light-amps=5", "heavy-volts=11.9", "heavy-amps=65", "system=12"], "internal" },
        { "cranking", ["cranking-volts=9.8", "celsius=5"], "bench-cranking.holds" },
        { "charging", ["charging-volts=28.1", "system=24"], "bench-charging.good" },
        { "lamp", ["watts=55"], "hot-resistance" },
        { "heater", ["watts=150"], "hot-resistance" },
        { "winding", ["winding-kind=injector", "ohms=OL"], "bench-winding.open" },
        { "diode", ["one-way=0.58", "other-way=OL"], "bench-diode.good" },
        { "sensor-supply", ["sensor-volts=3.1", "unplugged-volts=5.02"], "bench-sensor.sensor-pulls" },
        { "averages", ["mean-amps=5", "ripple-hertz=500", "bars=8"], "speed" },
        { "terminal", ["terminal=87a"], "meaning" },
        { "colour", ["colour=YE/BK"], "colour" },
        { "rating", ["fuse=15A"], "melts" },
        { "gauge", ["gauge=14 AWG"], "diameter" },
    };

    [Theory]
    [MemberData(nameof(Filled))]
    public void A_form_that_is_filled_in_answers(string name, string[] typed, string expected)
    {
        var answer = Said.Good(BenchAids.Find(name)!.Ask(Type(BenchAids.Find(name)!, typed)));

        Assert.Contains(expected, answer.Judgements.Select(j => j.Code).Concat(answer.Lines.Select(l => l.Name)).Append(""));
    }

    [Fact]
    public void Every_aid_but_the_one_that_takes_a_file_is_tried() => Assert.Equal(
        BenchAids.All.Select(a => a.Name).Except(["motor"]).Order(), Filled.Select(row => row.Data.Item1).Order());

    [Fact]
    public void A_recording_is_a_file()
    {
        var aid = BenchAids.Find("motor")!;
        var csv = new StringBuilder("s,A\n");
        for (var i = 0; i < 6000; i++)
        {
            csv.Append(FormattableString.Invariant($"{i / 10_000.0},{5 + (0.4 * Math.Sin(2 * Math.PI * 568 * i / 10_000))}\n"));
        }

        Assert.Contains("bench-form.missing", aid.Ask(Type(aid, [])).Problems.Select(p => p.Code));
        var answer = Said.Good(aid.Ask(Type(aid, ["bars=8"], Encoding.UTF8.GetBytes(csv.ToString()))));
        Assert.Equal(568 / 8.0 * 60, Said.Line(answer, "speed").Value, 20.0);
    }

    [Fact]
    public void What_is_missing_or_no_number_is_told_by_its_name()
    {
        var aid = BenchAids.Find("contact")!;

        Assert.Equal(["bench-form.missing", "bench-form.missing"], aid.Ask(Type(aid, [])).Problems.Select(p => p.Code));
        Said.Refused(aid.Ask(Type(aid, ["contact-drop=much", "load-current=6"])), "much", "drop across the contact");
        Said.Refused(aid.Ask(Type(aid, ["contact-drop=4 ohm", "load-current=6"])), "4 ohm", "contact");
        Assert.True(aid.Ask(Type(aid, ["contact-drop=0.18 V", "load-current=6 A"])).IsGood);
        Said.Refused(aid.Ask(Type(aid, ["contact-drop=180", "load-current=0.1"])), "1 A", "100 A");
    }

    [Fact]
    public void The_next_measurement_is_offered_to_be_typed()
    {
        var aid = BenchAids.Find("relay")!;

        Assert.StartsWith("ohms ", Said.Good(aid.Ask(Type(aid, []))).NextReading, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("en")]
    [InlineData("de")]
    public void Everything_on_a_form_has_a_text(string language)
    {
        var texts = BenchTexts.Source.All(Language.Find(language)!);
        foreach (var aid in BenchAids.All)
        {
            Assert.All(
                new[] { aid.Title.Code, aid.Purpose.Code, $"bench-group.{aid.Group}" }
                    .Concat(aid.Inputs.Select(i => i.Label.Code)).Concat(aid.Inputs.Select(i => i.Hint).OfType<string>())
                    .Concat(aid.Inputs.SelectMany(i => i.Choices).Select(c => $"bench-choice.{c}")),
                code => Assert.Contains(code, texts.Keys));
        }
    }

    private static AidTyped Type(Aid aid, string[] typed, byte[]? file = null)
    {
        var texts = aid.Inputs.ToDictionary(
            i => i.Name, i => i.Kind == InputKind.Choice && !i.IsOptional ? ImmutableArray.Create(i.Choices[0]) : [i.Usual]);
        foreach (var group in typed.Select(t => t.Split('=', 2)).GroupBy(t => t[0], t => t[1]))
        {
            Assert.Contains(group.Key, texts.Keys);
            texts[group.Key] = [.. group];
        }

        return new AidTyped(texts, file);
    }
}
