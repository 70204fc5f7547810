using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

public sealed class AdaptTests : IDisposable
{
    /// <summary>Mistyped, unknown and new things on the way.</summary>
    private const string Talk = """
        12
        plaice K2 = boot
        ?
        1
        K22
        list
        77
        25
        ?
        77
        boot sied
        yes
        ?
        80 to 150
        2
        K22
        K2
        9
        4
        xy

        about 4 mm2
        ?
        4
        C3~G2
        SP9

        under the carpet
        ?

        5
        2
        yes
        6
        3
        K9
        Second relay

        help
        8
        L1
        LB
        9
        Pump feed of a van
        slot F19 = B7


        """;

    private const string GermanTalk = """
        1
        Fuel pump
        Kraftstoffpumpe
        Tankraum
        8 min
        unbekannt

        2
        K2.87~C1.2a
        weiß nicht
        ungefähr 2,5 mm²
        ca. 1,2 m
        5
        1
        ja
        7
        4
        hilfe

        """;

    private readonly Shell _shell = new();

    private string Sheet => _shell.File("my-car.yaml");

    [Fact]
    public void A_conversation_reads_well_and_writes_a_sheet_that_lints()
    {
        ApprovedText.Matches("adapt", Shell.Expect(0, _shell.RunWith(Talk, "adapt", "pump-feed", "-o", Sheet)).Output);

        Shell.Expect(0, _shell.Run("lint", Sheet));
        Assert.StartsWith("# Adapted from pump-feed (", File.ReadAllText(Sheet), StringComparison.Ordinal);
        Shell.Expect(0, _shell.Run("open", Sheet, "--job", _shell.Job));
    }

    [Fact]
    public void A_conversation_in_german_reads_well()
    {
        using var shell = new Shell { Language = Language.German };
        var sheet = shell.File("my-car.yaml");

        ApprovedText.Matches("de-adapt", Shell.Expect(0, shell.RunWith(GermanTalk, "adapt", "pump-feed", "-o", sheet)).Output);
        Assert.NotNull(SheetReader.Read(File.ReadAllText(sheet)).Circuit);
    }

    [Fact]
    public void What_a_conversation_changed_can_be_changed_without_questions()
    {
        var talk = Shell.Expect(0, _shell.RunWith("slot K2 = R3\nconnector in K2~C1\n\n", "adapt", "pump-feed", "-o", Sheet)).Output;
        var line = talk.Split('\n').Single(l => l.StartsWith("halfsplit adapt ", StringComparison.Ordinal));
        var changes = line.Split(" --change ").Skip(1).SelectMany(c => new[] { "--change", c.Trim('"') });
        var other = _shell.File("other.yaml");
        Shell.Expect(0, _shell.Run(["adapt", "pump-feed", "-o", other, .. changes]));

        Assert.Equal(File.ReadAllText(Sheet), File.ReadAllText(other));
    }

    [Fact]
    public void A_taken_slot_is_asked_for_again()
    {
        // The part, its name and place as they are, a taken slot, a free one, the price as it is; nothing more.
        var talk = Shell.Expect(0, _shell.RunWith("1\nK2\n\n\n12\nR5\n\n\n", "adapt", "pump-feed", "-o", Sheet)).Output;

        Assert.Contains("holds F12 already", talk, StringComparison.Ordinal);
        Assert.Contains("slot: R5", File.ReadAllText(Sheet), StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_answer_is_asked_for_again_and_loses_none_before_it()
    {
        // A connector: its wire, a name that is taken, a free one, no words, no place, a share that can't be, one that can.
        var talk = Shell.Expect(
            0, _shell.RunWith("3\nK2.87~C1.2a\nK2\nC9\n\n\n140 %\n40 %\n2\nK2.87~C9.1a\nplaid\nGN\n2.5\n4mm2\n\n\n", "adapt", "pump-feed", "-o", Sheet)).Output;

        var sheet = File.ReadAllText(Sheet);
        Assert.Contains("C9: { kind: connector", sheet, StringComparison.Ordinal);
        Assert.Contains("wire 4mm2 1.12m GN -> C9.1", sheet, StringComparison.Ordinal);
        Assert.Contains("\"plaid\" is no wire colour", talk, StringComparison.Ordinal);
        Assert.Contains("write 2.5mm2", talk, StringComparison.Ordinal);
    }

    /// <summary>An answer that names nothing is no reason to take the next ones as answers to something else.</summary>
    [Fact]
    public void What_names_nothing_is_asked_for_again()
    {
        // A part that isn't there, then one that is; its name; a place that isn't in the list, then one that is; slot and price as they are.
        var talk = Shell.Expect(0, _shell.RunWith("1\nK77\nK7\n\n77\n3\n\n\n\n", "adapt", "horn", "-o", Sheet)).Output;
        Assert.EndsWith("--change \"place K7 = left bumper\"", Changes(talk), StringComparison.Ordinal);

        // A relay and a wire likewise, and the wire's list with its numbers.
        talk = Shell.Expect(0, _shell.RunWith("2\nK22~C1\nlist\n99\n1\nGN\n\n\n5\nK9\n2\nyes\n\n", "adapt", "pump-feed", "-o", Sheet, "--overwrite")).Output;
        Assert.Contains("--change \"colour ", Changes(talk), StringComparison.Ordinal);
        Assert.Contains("--change \"without relay ", Changes(talk), StringComparison.Ordinal);

        static string Changes(string talk) => talk.Split('\n').Last(l => l.StartsWith("halfsplit adapt ", StringComparison.Ordinal));
    }

    [Fact]
    public void A_question_mark_at_the_menu_shows_it()
    {
        var talk = Shell.Expect(0, _shell.RunWith("?\n\n", "adapt", "pump-feed", "-o", Sheet)).Output;

        Assert.Equal(2, talk.Split("what differs in this car?").Length - 1);
        Assert.DoesNotContain("no change", talk, StringComparison.Ordinal);
    }

    [Fact]
    public void A_thin_switch_is_not_burdened_without_a_yes()
    {
        var talk = Shell.Expect(0, _shell.RunWith("without relay K2\n\n\n", "adapt", "pump-feed", "-o", Sheet)).Output;
        Assert.Contains("ECU.pump-drive, which bears 1 A", talk, StringComparison.Ordinal);
        Assert.False(File.Exists(Sheet));

        Assert.Contains(
            "--change \"without relay K2 despite the amps\"",
            Shell.Expect(0, _shell.RunWith("without relay K2\nyes\n\n", "adapt", "pump-feed", "-o", Sheet)).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Quitting_writes_nothing_and_an_early_end_writes_what_was_changed()
    {
        Assert.Contains("Nothing is written.", Shell.Expect(0, _shell.RunWith("slot K2 = R3\n1\nquit\n", "adapt", "pump-feed", "-o", Sheet)).Output, StringComparison.Ordinal);
        Assert.False(File.Exists(Sheet));
        Assert.Contains("Nothing is written.", Shell.Expect(0, _shell.RunWith("\n", "adapt", "pump-feed", "-o", Sheet)).Output, StringComparison.Ordinal);
        Assert.False(File.Exists(Sheet));
        Shell.Expect(0, _shell.RunWith("slot K2 = R3\n1\nK2\n", "adapt", "pump-feed", "-o", Sheet));
        Assert.Contains("slot: R3", File.ReadAllText(Sheet), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_is_overwritten_only_where_that_is_said()
    {
        File.WriteAllText(Sheet, "mine");
        string[] line = ["adapt", "pump-feed", "-o", Sheet, "--change", "slot K2 = R3"];
        Assert.Contains("--overwrite", Shell.Expect(1, _shell.Run(line)).Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(Sheet));

        Shell.Expect(0, _shell.Run([.. line, "--overwrite"]));
        Assert.Contains("slot: R3", File.ReadAllText(Sheet), StringComparison.Ordinal);
    }

    [Fact]
    public void An_adapted_sheet_can_be_adapted_into_its_own_file()
    {
        Shell.Expect(0, _shell.Run("adapt", "pump-feed", "-o", Sheet, "--change", "slot K2 = R3"));
        Shell.Expect(0, _shell.Run("adapt", Sheet, "-o", Sheet, "--overwrite", "--change", "slot K1 = R9"));

        Assert.StartsWith("# Adapted from my-car.yaml (", File.ReadAllText(Sheet), StringComparison.Ordinal);
        Assert.Contains("slot: R9", File.ReadAllText(Sheet), StringComparison.Ordinal);
    }

    [Fact]
    public void A_script_reads_what_changed_and_what_was_assumed()
    {
        var json = Shell.Expect(0, _shell.Run(
            "adapt", "pump-feed", "-o", Sheet, "--json", "--change", "slot K2 = R3", "--change", "length K2~C1 = unknown", "--change", "gauge MP~ECU = 0.1mm2")).Json;

        Assert.Equal("my-car.yaml", json.GetProperty("written").GetString());
        Assert.Equal(3, json.GetProperty("changes").GetArrayLength());
        Assert.Equal(
            ["diff.part-value", "diff.wire-gauge", "diff.wire-length"],
            json.GetProperty("differences").EnumerateArray().Select(d => d.GetProperty("code").GetString()!).Order(StringComparer.Ordinal));
        Assert.Equal("adapt.assumed-length", Assert.Single(json.GetProperty("assumptions").EnumerateArray()).GetProperty("code").GetString());
        Assert.Equal("lint.fuse-over-wire", Assert.Single(json.GetProperty("warnings").EnumerateArray()).GetProperty("code").GetString());
        Assert.Equal(File.ReadAllText(Sheet), json.GetProperty("text").GetString());
    }

    [Theory]
    [InlineData(2, "Did you mean \"K2\"?", "adapt", "pump-feed", "--change", "slot K22 = R7")]
    [InlineData(2, "A change begins with", "adapt", "pump-feed", "--change", "sloppy K2")]
    [InlineData(2, "The change is empty", "adapt", "pump-feed", "--change", "")]
    [InlineData(2, "K3 is free", "adapt", "pump-feed", "--change", "id K2 = K1")]
    [InlineData(2, "-o my-car.yaml", "adapt", "pump-feed")]
    [InlineData(2, "--change", "adapt", "pump-feed", "--json")]
    [InlineData(1, "no shipped sheet", "adapt", "pmp-feed", "--change", "slot K2 = R3")]
    [InlineData(2, "--against", "adapt", "pump-feed", "--against", "horn", "--change", "slot K2 = R3")]
    [InlineData(1, "no shipped sheet", "adapt", "pump-feed", "--against", "hron")]
    [InlineData(1, "can't be written", "adapt", "pump-feed", "-o", "no/such/folder/my-car.yaml", "--change", "slot K2 = R3")]
    public void What_is_wrong_is_said_with_how_to_mend_it(int code, string text, params string[] line) =>
        Assert.Contains(text, Shell.Expect(code, _shell.Run(line)).Error.ReplaceLineEndings(" "), StringComparison.Ordinal);

    [Fact]
    public void Two_sheets_are_compared()
    {
        Shell.Expect(0, _shell.Run("adapt", "pump-feed", "-o", Sheet, "--change", "id K2 = K5", "--change", "slot K1 = R9"));
        var told = Shell.Expect(0, _shell.Run("adapt", "pump-feed", "--against", Sheet)).Output;
        var json = Shell.Expect(0, _shell.Run("adapt", "pump-feed", "--against", Sheet, "--json")).Json;

        Assert.Contains("K2 is now called K5.", told, StringComparison.Ordinal);
        Assert.Equal(2, json.GetProperty("differences").GetArrayLength());
        Assert.Contains("no difference", Shell.Expect(0, _shell.Run("adapt", "horn", "--against", "horn")).Output, StringComparison.Ordinal);
    }

    public void Dispose() => _shell.Dispose();
}
