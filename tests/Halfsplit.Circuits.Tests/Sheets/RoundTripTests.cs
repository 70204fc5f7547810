using CsCheck;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Sheets;

public sealed class RoundTripTests
{
    [Fact]
    public void A_written_circuit_reads_back_the_same() =>
        CircuitGenerator.Circuits.Sample(circuit =>
        {
            var written = SheetWriter.Write(circuit);
            var reading = SheetReader.Read(written);
            Assert.Empty(reading.Problems);
            Assert.Equal(CircuitDump.Of(circuit), CircuitDump.Of(reading.Circuit!));
            Assert.Equal(written, SheetWriter.Write(reading.Circuit!));
        });

    [Fact]
    public void Random_circuits_have_no_errors() =>
        CircuitGenerator.Circuits.Sample(circuit =>
            Assert.DoesNotContain(CircuitLint.Check(circuit), p => p.Severity == ProblemSeverity.Error));

    [Fact]
    public void Random_circuits_have_every_kind_of_part()
    {
        var kinds = new HashSet<string>();
        CircuitGenerator.Circuits.Sample(c => kinds.UnionWith(c.Parts.Select(p => p.Kind)), iter: 500, threads: 1);
        Assert.Superset(
            new HashSet<string>
            {
                "battery", "alternator", "fuse", "fusible link", "breaker", "ptc", "relay", "switch", "cut-off switch",
                "module", "motor", "starter", "lamp", "led", "heater", "sounder", "solenoid", "resistor", "sensor", "diode",
                "splice", "metal", "ground", "connector",
            },
            kinds);
    }

    [Fact]
    public void The_body_keeps_its_place_and_notes()
    {
        var sheet = MarkedSheet.Right.Replace(
            "  S1: { kind: splice }", "  BODY: { kind: metal, name: Shell }\n  S1: { kind: splice }", StringComparison.Ordinal);
        var circuit = SheetReader.Read(sheet).Circuit!;
        var again = SheetReader.Read(SheetWriter.Write(circuit)).Circuit!;
        Assert.Equal("Shell", circuit[Metal.Body].Notes.Name);
        Assert.Equal(CircuitDump.Of(circuit), CircuitDump.Of(again));
    }

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("no: yes")]
    [InlineData("- a")]
    [InlineData("# not a comment")]
    [InlineData("a # b")]
    [InlineData("\"quoted\" and 'quoted'")]
    [InlineData("{ a: b }, [c]")]
    [InlineData("&a *b !c |d >e %f @g `h")]
    [InlineData("naïve Ω µ ± 日本")]
    [InlineData("tab\tand\r\nlines\n\nmore")]
    [InlineData("\u0085 \u2028 \ufeff \u00a0 \u0007")]
    [InlineData("null")]
    [InlineData("---")]
    [InlineData("a:")]
    [InlineData("🚗 emoji")]
    public void Any_text_survives(string text)
    {
        var circuit = SheetReader.Read(MarkedSheet.Right).Circuit!;
        var draft = new CircuitDraft(
            "T", circuit.Parts, circuit.Paths, circuit.Places, circuit.Conditions, circuit.Complaints, ["x" + text + "x"], "y" + text + "y");
        var read = SheetReader.Read(SheetWriter.Write(CircuitBuilder.Build(draft).Circuit!));
        Assert.Empty(read.Problems);
        Assert.Equal("x" + text + "x", Assert.Single(read.Circuit!.Cautions));
        Assert.Equal("y" + text + "y", read.Circuit.Summary);
    }
}
