using System.Text;
using CsCheck;
using Halfsplit.Circuits.Importing;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Importing;

public sealed class TableImportTests
{
    private static readonly TextCatalog English = new(Language.English, CircuitTexts.Source), German = new(Language.German, CircuitTexts.Source);

    public static TheoryData<string> Names() => [.. ShippedSheets.Names];

    private static string Dump(Circuit circuit) => string.Join('\n', circuit.Wires.Select(w => $"{w.Id} {w.From} {w.To} {w.Spec}"));

    private static Circuit Whole(string sheet)
    {
        var reading = SheetReader.Read(sheet);
        Assert.True(reading.Circuit is not null, string.Join('\n', reading.Problems.Select(p => $"{p.Line}: {English.Say(p.Message)}")) + "\n" + sheet);
        return reading.Circuit!;
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_sheet_written_as_tables_and_read_again_has_the_same_wires_joints_and_parts(string name)
    {
        var circuit = ShippedSheets.Load(name);
        var made = TableImport.Read(TableExport.Wires(circuit), TableExport.Parts(circuit), circuit.Title);
        var again = Whole(made.Sheet!);

        Assert.Equal(Dump(circuit), Dump(again));
        Assert.Equal(circuit.Joints, again.Joints);
        Assert.Equal(circuit.Parts.Select(p => (p.Id, p.Kind)).Order(), again.Parts.Select(p => (p.Id, p.Kind)).Order());
        Assert.Equal(
            circuit.Parts.OrderBy(p => p.Id, StringComparer.Ordinal).Select(p => p is Connector c ? (c with { BelongsToB = [] }).ToString() : SheetWriterOf(p)),
            again.Parts.OrderBy(p => p.Id, StringComparer.Ordinal).Select(p => p is Connector c ? (c with { BelongsToB = [] }).ToString() : SheetWriterOf(p)));
        Assert.DoesNotContain(made.Remarks, r => r.Severity == ProblemSeverity.Error);

        string SheetWriterOf(Part part) => part.ToString();
    }

    /// <summary>Without the table of parts the wires are the same wherever the names say what the parts are; the rest is said.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_wires_alone_give_the_same_wires_or_an_error_that_names_the_part(string name)
    {
        var circuit = ShippedSheets.Load(name);
        var made = TableImport.Read(TableExport.Wires(circuit), null, circuit.Title);

        // A frame to which only grounds are bolted is in no wire's row.
        var named = circuit.Wires.SelectMany(w => new[] { w.From.Part, w.To.Part })
            .Concat(circuit.Joints.SelectMany(j => new[] { j.First.Part, j.Second.Part })).ToHashSet(StringComparer.Ordinal);
        var silent = circuit.Parts.Where(p => p.Id != Metal.Body && named.Contains(p.Id) && !made.Remarks.Any(r => English.Say(r.Message).Contains(p.Id, StringComparison.Ordinal)));
        Assert.Empty(silent.Select(p => p.Id));
        Assert.All(made.Remarks.Where(r => r.Severity == ProblemSeverity.Error), r => Assert.True(English.Has(r.Message.Code)));
    }

    private const string Harness = """
        Von;Nach;Querschnitt [mm²];Farbe;Länge [mm];Bemerkung
        BAT.+;F1.1;2,5;rot;600;Dauerplus
        F1.2;-S1:1;1,5;rt/ws;1200;"mit ""Anführung""; und Semikolon"
        -S1:2;L1;0,75;schwarz/weiß;900;
        L1;31;0,75;br;400;Masse
        Masse;BAT.-;16;BK;400;
        """;

    [Fact]
    public void A_German_table_with_semicolons_and_commas_becomes_a_circuit()
    {
        var made = TableImport.Read("\ufeff" + Harness, null, "Lampe");
        var circuit = Whole(made.Sheet!);

        Assert.Equal(
            ["BAT.pos~F1.1 2.5 0.6 RD", "F1.2~S1.1 1.5 1.2 RD/WH", "S1.2~L1.1 0.75 0.9 BK/WH", "L1.2~BODY 0.75 0.4 BN", "BODY~BAT.neg 16 0.4 BK"],
            circuit.Wires.Select(w => FormattableString.Invariant($"{w.Id} {w.Spec.Gauge.SquareMillimetres} {w.Spec.Length} {w.Spec.Colour}")));
        Assert.Equal(["battery", "fuse", "switch", "lamp", "metal"], circuit.Parts.Select(p => p.Kind));
        Assert.Empty(CircuitLint.Check(circuit).Where(p => p.Severity == ProblemSeverity.Error));
        Assert.Contains(made.Remarks, r => r.Message.Code == "table.value-assumed" && English.Say(r.Message).Contains("F1", StringComparison.Ordinal));
        Assert.Contains(made.Remarks, r => r.Message.Code == "table.column-left-out" || !Harness.Contains("Unbekannt", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("from,to,gauge,length\nBAT.pos,F1.1,14,6 ft", "14AWG", "6ft")]
    [InlineData("from,to,gauge,length\nBAT.pos,F1.1,AWG 10,12 in", "10AWG", "12in")]
    [InlineData("from\tto\tsize [AWG]\tlen (in)\nBAT.pos\tF1.1\t16\t30", "16AWG", "30in")]
    [InlineData("from,to,gauge,length\nBAT.pos,F1.1,\"0,5 mm²\",\"1,25 m\"", "0.5mm2", "1.25m")]
    [InlineData("from,to,gauge,length\nBAT.pos,F1.1,2.5,350", "2.5mm2", "350mm")]
    [InlineData("from,to,gauge,length\nBAT.pos,F1.1,2.5,35cm", "2.5mm2", "35cm")]
    [InlineData("from,from pin,to,to pin,gauge,length\nBAT,+,F1,1,4,2", "4mm2", "2m")]
    [InlineData("Length,Gauge,To,From\n2 m,4mm2,F1/1,BAT:pos", "4mm2", "2m")]
    [InlineData("from,to,gauge,length\nBAT.pos,F1.1,,", "about 1mm2", "about 1m")]
    [InlineData("from,to\nBAT.pos,F1.1", "about 1mm2", "about 1m")]
    [InlineData("from,to,gauge,length\nBAT.pos,F1.1,thick,-5", "about 1mm2", "about 1m")]
    [InlineData("from,to,gauge,length\nBAT.pos,F1.1,4mm2,abc", "4mm2", "about 1m")]
    [InlineData("from,to,gauge,length\nBAT.pos,F1.1,about 4mm2,\"ca. 1,2 m\"", "about 4mm2", "about 1.2m")]
    [InlineData("von;nach;Querschnitt [mm²];Länge [mm]\nBAT.pos;F1.1;ungefähr 2,5;~ 350", "about 2.5mm2", "about 350mm")]
    [InlineData("from,to,gauge [AWG],length\nBAT.pos,F1.1,2/0,6 feet", "2/0AWG", "6ft")]
    [InlineData("from,to,gauge [AWG],length\nBAT.pos,F1.1,1/0,1 foot", "1/0AWG", "1ft")]
    [InlineData("from,to,AWG,length\nBAT.pos,F1.1,3/0 AWG,2 Fuß", "3/0AWG", "2ft")]
    [InlineData("from,to,gauge,length\nBAT.pos,F1.1,4/0,2m\nF1.2,K1.30,3,2m", "4/0AWG", "2m")]
    [InlineData("sep=;\nfrom;to;gauge;length\nBAT.pos;F1.1;2,5mm2;1,5m", "2.5mm2", "1.5m")]
    [InlineData("\ufeff\"sep=;\"\r\nfrom;to;gauge;length\r\nBAT.pos;F1.1;2,5mm2;1,5m", "2.5mm2", "1.5m")]
    public void Gauges_and_lengths_are_read_in_every_usual_way(string table, string gauge, string length) =>
        Assert.Contains($"BAT.pos -> wire {gauge} {length} -> F1.1", TableImport.Read(table, null, "t").Sheet!, StringComparison.Ordinal);

    [Theory]
    [InlineData("from,to\nQQ1.3,F1.1", "table.kind-unknown", ProblemSeverity.Error)]
    [InlineData("from,to\nK1.99,F1.1", "table.bad-terminal", ProblemSeverity.Error)]
    [InlineData("from,to\nF1.1,F1.1", "table.same-ends", ProblemSeverity.Error)]
    [InlineData("from,to\n,F1.1", "table.no-end", ProblemSeverity.Error)]
    [InlineData("from,to\nF1.1,F2.1", "table.no-battery", ProblemSeverity.Error)]
    [InlineData("from,gauge\nF1.1,2", "table.no-column", ProblemSeverity.Error)]
    [InlineData("", "table.empty", ProblemSeverity.Error)]
    [InlineData("from,to\n\n", "table.empty", ProblemSeverity.Error)]
    [InlineData("BAT.pos,F1.1,2.5,600\nF1.2,L1.1,1,900", "table.no-header", ProblemSeverity.Error)]
    [InlineData("F1;L1", "table.no-header", ProblemSeverity.Error)]
    [InlineData("31;G1;1\nF1;L1;1", "table.no-header", ProblemSeverity.Error)]
    [InlineData("connector 1,pin 1x,connector 2,pin 2x\nF1.1,1,F2.1,2", "table.no-column", ProblemSeverity.Error)]
    [InlineData("from,to,gauge\nF1.1,F2.1,thick", "table.gauge-unread", ProblemSeverity.Warning)]
    [InlineData("from,to,gauge\nF1.1,F2.1,", "table.gauge-missing", ProblemSeverity.Warning)]
    [InlineData("from,to,length\nF1.1,F2.1,long", "table.length-unread", ProblemSeverity.Warning)]
    [InlineData("from,to,length [mm]\nF1.1,F2.1,1.200", "table.length-odd", ProblemSeverity.Warning)]
    [InlineData("from,to,length\nF1.1,F2.1,3", "table.usual-length", ProblemSeverity.Warning)]
    [InlineData("from,to,gauge\nF1.1,F2.1,3", "table.usual-gauge", ProblemSeverity.Warning)]
    [InlineData("from,to,colour\nF1.1,F2.1,mauve", "table.colour-unread", ProblemSeverity.Warning)]
    [InlineData("from,to\nF1.1,C1.3", "table.half-assumed", ProblemSeverity.Warning)]
    [InlineData("from,to\nF1.1,C1.3a", "table.half-empty", ProblemSeverity.Warning)]
    [InlineData("from,to\nF1.1,S1.4\nS1.9,F1.2", "table.positions-assumed", ProblemSeverity.Warning)]
    [InlineData("from,to\nF1.1,ECU.A7\nF1.1,ECU.30", "table.module-terminals", ProblemSeverity.Warning)]
    [InlineData("from,to\nF1.1,L1.56a\nL1.31,G1", "table.filaments-assumed", ProblemSeverity.Warning)]
    [InlineData("from,to,gauge,smell\nF1.1,F2.1,2.5,bad", "table.column-left-out", ProblemSeverity.Warning)]
    [InlineData("from,to,wire\nF1.1,F2.1,7\nF1.2,F2.2,7", "table.wire-name-left-out", ProblemSeverity.Note)]
    [InlineData("from,to\nF1,F2", "table.by-direction", ProblemSeverity.Note)]
    [InlineData("from,from pin,to,to pin\nK1,87,M1,-", "table.dash-none", ProblemSeverity.Warning)]
    [InlineData("from,to\nF1,G1.2", "table.terminal-left-out", ProblemSeverity.Note)]
    [InlineData("from,to\nF1.1,K 2 x.30", "table.renamed", ProblemSeverity.Note)]
    [InlineData("from,to,colour,Farbe\nF1.1,F2.1,RD,BK", "table.column-second", ProblemSeverity.Warning)]
    [InlineData("from,to,,colour\nF1.1,F2.1,12,RD", "table.column-nameless", ProblemSeverity.Warning)]
    [InlineData("from,to\nF1.1,F2.1,RD", "table.column-nameless", ProblemSeverity.Warning)]
    [InlineData("from,to,remark\nF1.1,F2.1,hot", "table.remarks-left-out", ProblemSeverity.Note)]
    [InlineData("from,to,gauge\nF1.1,F2.1,2.5\nF1.1,F2.1,2.5", "table.row-twice", ProblemSeverity.Warning)]
    [InlineData("from,to,gauge\nF1.1,F2.1,2.5\nF2.1,F1.1,2.5", "table.row-twice", ProblemSeverity.Warning)]
    [InlineData("from,to,gauge\nF1.1,F2.1,2.5\nF1.1,F2.1,4", "table.row-beside", ProblemSeverity.Warning)]
    [InlineData("from,to,gauge,colour\nF1.1,F2.1,direct,RD", "table.direct-left-out", ProblemSeverity.Warning)]
    [InlineData("from,to,place\nF1.1,F2.1,a -> b", "table.place-left-out", ProblemSeverity.Warning)]
    [InlineData("from,to\nF1.1,F1.2", "table.fuse-bridged", ProblemSeverity.Warning)]
    [InlineData("from,to\nF1,F1", "table.fuse-bridged", ProblemSeverity.Warning)]
    public void What_a_table_leaves_open_is_said(string table, string code, ProblemSeverity severity)
    {
        var remarks = TableImport.Read(table, null, "t").Remarks;

        Assert.True(remarks.Any(r => r.Message.Code == code && r.Severity == severity), string.Join('\n', remarks.Select(r => $"{r.Severity} {English.Say(r.Message)}")));
        Assert.All(remarks, r => Assert.True(German.Has(r.Message.Code) && English.Has(r.Message.Code), r.Message.Code));
    }

    [Fact]
    public void The_table_of_parts_says_kinds_and_values()
    {
        var made = TableImport.Read(
            "from,to\nBAT.pos,QQ1.1\nQQ1.2,S1.30\nS1.15,L1.1\nL1.2,G1",
            "Bauteil;Art;Bezeichnung;Nennstrom [A];Leistung;positions\nQQ1;Sicherung;Lampensicherung;10;;\nL1;;Lampe;;5 W;\nS1;;;;;{ off: [], on: [30-15] }\nG1;wombat;;;;", "t");
        var circuit = Whole(made.Sheet!.Replace("kind: wombat", "kind: ground", StringComparison.Ordinal));

        Assert.Equal(10, Assert.IsType<Fuse>(circuit["QQ1"]).RatingAmps);
        Assert.Equal("Lampensicherung", circuit["QQ1"].Notes.Name);
        Assert.Equal(5, Assert.IsType<Lamp>(circuit["L1"]).Filaments[0].Watts);
        Assert.Equal(["15", "30"], circuit["S1"].Terminals.Order());
        Assert.Contains(made.Remarks, r => r is { Table: TableKind.Parts, Line: 5, Message.Code: "table.kind-unread" });
        Assert.DoesNotContain(made.Remarks, r => r.Message.Code == "table.value-assumed");
    }

    /// <summary>A harness's table ends at the body; without the battery's own cable no current would return.</summary>
    [Fact]
    public void A_table_without_the_batterys_ground_cable_gets_one_that_is_said_to_be_assumed()
    {
        const string Rows = "from,to,gauge,length\nBAT.pos,F1.1,4mm2,1m\nF1.2,S1.1,1mm2,2m\nS1.2,L1.1,1mm2,1m\nL1.2,31,1mm2,1m";
        var made = TableImport.Read(Rows, null, "t");

        Assert.Empty(CircuitLint.Check(Whole(made.Sheet!)).Where(p => p.Severity == ProblemSeverity.Error));
        Assert.Contains("16mm2", English.Say(Assert.Single(made.Remarks, r => r.Message.Code == "table.strap-assumed").Message), StringComparison.Ordinal);
        Assert.DoesNotContain(TableImport.Read(Rows + "\n31,BAT.neg,25mm2,0.3m", null, "t").Remarks, r => r.Message.Code == "table.strap-assumed");
    }

    /// <summary>What nobody measured must widen what is predicted, as it does where a person says "about".</summary>
    [Fact]
    public void What_is_assumed_of_a_wire_is_a_guess_and_what_is_said_is_none()
    {
        var circuit = Whole(TableImport.Read("from,to,gauge,length\nBAT.pos,F1.1,4mm2,abc\nF1.2,L1.1,,2m\nL1.2,31,1mm2,1m", null, "t").Sheet!);

        Assert.Equal(
            [("BAT.pos~F1.1", false, true), ("F1.2~L1.1", true, false), ("L1.2~BODY", false, false), ("BODY~BAT.neg", true, true)],
            circuit.Wires.Select(w => (w.Id, w.Spec.GaugeGuessed, w.Spec.LengthGuessed)));
        Assert.Contains("BAT.pos,F1.1,4mm2,,about 1m,", TableExport.Wires(circuit), StringComparison.Ordinal);
    }

    public static TheoryData<string, bool> Encodings() => new()
    {
        { "utf-8", false },
        { "utf-16", false },
        { "utf-16BE", false },
        { "windows-1252", true },
    };

    [Theory]
    [MemberData(nameof(Encodings))]
    public void A_table_is_read_in_the_letters_that_a_spreadsheet_wrote(string name, bool isSaid)
    {
        byte[] Bytes(string text)
        {
            var encoding = CodePagesEncodingProvider.Instance.GetEncoding(name) ?? Encoding.GetEncoding(name);
            return [.. encoding.Preamble, .. encoding.GetBytes(text)];
        }

        var made = TableImport.Read(
            Bytes("von;nach;Querschnitt [mm²];Länge [mm];Farbe\nBAT.pos;F1.1;2,5;600;grün"), Bytes("Bauteil;Bezeichnung\nF1;Lüftersicherung"), "t");

        Assert.Contains("BAT.pos -> wire 2.5mm2 600mm GN -> F1.1", made.Sheet!, StringComparison.Ordinal);
        Assert.Contains("Lüftersicherung", made.Sheet!, StringComparison.Ordinal);
        Assert.Equal(isSaid ? [TableKind.Wires, TableKind.Parts] : [], made.Remarks.Where(r => r.Message.Code == "table.windows-1252").Select(r => r.Table));
        Assert.True(English.Has("table.windows-1252") && German.Has("table.windows-1252"));
    }

    [Fact]
    public void Lines_are_counted_with_the_one_that_says_the_separator() =>
        Assert.Contains(TableImport.Read("sep=;\nfrom;to;gauge\nF1.1;F2.1;thick", null, "t").Remarks, r => r is { Line: 3, Message.Code: "table.gauge-unread" });

    [Fact]
    public void A_part_of_unknown_kind_without_a_terminal_is_said_in_whole_words() =>
        Assert.Equal(
            "Row left out: QQ1 (kind: unknown) has no terminal \"–\". Correct the terminal, or the part's kind.",
            English.Say(TableImport.Read("from,to\nQQ1,F1.1", null, "t").Remarks.Single(r => r.Message.Code == "table.bad-terminal").Message));

    [Fact]
    public void A_row_that_stands_twice_is_one_wire_and_keeps_its_name()
    {
        var made = TableImport.Read(
            "from,to,gauge,length,colour,wire,remark\nBAT.pos,F1.1,4mm2,1m,RD,W1,first\nF1.2,L1.1,1mm2,2m,YE,W2,\nF1.1 , BAT.pos,4mm2,1m,RD,W1,again\nL1.2,31,1mm2,1m,BN,W3,", null, "t");

        Assert.Equal(3, made.Wires);
        Assert.Contains("RD as W1 -> F1.1", made.Sheet!, StringComparison.Ordinal);
        var remark = Assert.Single(made.Remarks, r => r.Message.Code == "table.row-twice");
        Assert.Equal(4, remark.Line);
        Assert.Contains("line 2", English.Say(remark.Message), StringComparison.Ordinal);
    }

    [Fact]
    public void A_dash_in_a_column_of_terminals_is_the_minus_of_a_part_that_has_one()
    {
        var made = TableImport.Read(
            "from,from pin,to,to pin,gauge\nBAT,+,F1,1,4\nF1,2,M1,+,1\nM1,-,G1,-,1\nG1,-,BAT,-,16", "part,kind\nG1,splice", "t");

        Assert.Contains("BAT.pos -> wire 4mm2 about 1m -> F1.1", made.Sheet!, StringComparison.Ordinal);
        Assert.Contains("M1.neg -> wire 1mm2 about 1m -> G1", made.Sheet!, StringComparison.Ordinal);
        Assert.Contains("G1 -> wire 16mm2 about 1m -> BAT.neg", made.Sheet!, StringComparison.Ordinal);
    }

    /// <summary>Where a dash means "none", the motor's two wires are not both at its minus: that would short the feed to ground.</summary>
    [Fact]
    public void A_dash_where_no_row_names_the_plus_is_no_terminal_and_it_is_said()
    {
        var made = TableImport.Read("from,from pin,to,to pin,gauge\nK1,87,M1,-,1\nM1,-,G1,-,1", null, "t");

        Assert.Contains("K1.87 -> wire 1mm2 about 1m -> M1.pos", made.Sheet!, StringComparison.Ordinal);
        Assert.Contains("M1.neg -> wire 1mm2 about 1m -> G1", made.Sheet!, StringComparison.Ordinal);
        Assert.Equal([2, 3], made.Remarks.Where(r => r.Message.Code == "table.dash-none").Select(r => r.Line));
        Assert.All(made.Remarks.Where(r => r.Message.Code == "table.dash-none"), r => Assert.StartsWith("M1:", English.Say(r.Message), StringComparison.Ordinal));
        Assert.Contains(made.Remarks, r => r.Message.Code == "table.by-direction");
    }

    [Theory]
    [InlineData("from,from pin,to,to pin,gauge\nK1,87,M1,pos,1\nM1,-,G1,-,1")]
    [InlineData("from,from pin,to,to pin,gauge\nK1,87,M1,+,1\nG1,,M1,-,1")]
    [InlineData("from,to,gauge\nK1.87,M1.1,1\nM1.-,G1,1")]
    public void A_dash_beside_a_plus_or_behind_the_part_itself_is_the_minus(string table)
    {
        var made = TableImport.Read(table, null, "t");

        Assert.Contains("M1.neg", made.Sheet!, StringComparison.Ordinal);
        Assert.Contains("-> M1.pos", made.Sheet!, StringComparison.Ordinal);
        Assert.DoesNotContain(made.Remarks, r => r.Message.Code is "table.dash-none" or "table.by-direction");
    }

    /// <summary>Without terminals nobody can say that it is the same wire: a fuse feeds a splice twice, two straps lead to one ground.</summary>
    [Theory]
    [InlineData("from,to,gauge\nF1,X1,2.5\nF1,X1,2.5", "part,kind\nX1,splice", 2)]
    [InlineData("from,to,gauge\nF1.2,X1,2.5\nX1,F1.2,2.5", "part,kind\nX1,splice", 2)]
    [InlineData("from,to,gauge\nG1,31,16\nG1,31,16", null, 2)]
    [InlineData("from,from pin,to,to pin,gauge\nM1,-,G1,-,1\nM1,-,G1,-,1", null, 2)]
    [InlineData("from,from pin,to,to pin,gauge\nF1,2,K1,30,1\nF1,2,K1,30,1", null, 1)]
    [InlineData("from,to,gauge\nG1,31,direct\nG1,31,direct", null, 1)]
    public void Only_a_row_with_both_terminals_stands_twice_for_certain(string table, string? parts, int kept)
    {
        var made = TableImport.Read(table, parts, "t");

        Assert.Equal(kept, made.Wires + made.Joints);
        Assert.Equal(kept == 2, made.Remarks.Any(r => r is { Line: 3, Message.Code: "table.row-beside" }));
        Assert.Equal(kept == 1, made.Remarks.Any(r => r is { Line: 3, Message.Code: "table.row-twice" }));
    }

    [Theory]
    [InlineData("green+yellow", "GN/YE")]
    [InlineData("green, yellow", "GN/YE")]
    [InlineData("green; yellow", "GN/YE")]
    [InlineData("green-yellow", "GN/YE")]
    [InlineData("green yellow", "GN/YE")]
    [InlineData("green with yellow stripe", "GN/YE")]
    [InlineData("green-yellow stripe", "GN/YE")]
    [InlineData("grün-gelb", "GN/YE")]
    [InlineData("green/yellow", "GN/YE")]
    [InlineData("gn-ye", "GN/YE")]
    [InlineData("red-black", "RD/BK")]
    [InlineData("GNYE", "GNYE")]
    [InlineData("gnye", "GNYE")]
    [InlineData("GNYE/BK", "GNYE/BK")]
    [InlineData("rdbk", "RDBK")]
    public void Two_colours_are_a_wire_and_its_stripe_and_the_one_colour_is_said_by_its_code(string said, string colour)
    {
        var made = TableImport.Read($"from,to,gauge,length,colour\nBAT.pos,F1.1,4mm2,1m,\"{said}\"", null, "t");

        Assert.Contains($"BAT.pos -> wire 4mm2 1m {colour} -> F1.1", made.Sheet!, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fuse_that_is_bridged_through_another_part_is_seen_in_the_sheet()
    {
        var made = TableImport.Read("from,to,gauge\nBAT.pos,F1.1,4\nF1.2,L1.1,1\nL1.2,BAT.neg,1\nBAT.pos,L1.1,1", null, "t");

        Assert.Contains(CircuitLint.Check(Whole(made.Sheet!)), p => p.Message.Code == "lint.fuse-bridged");
    }

    [Theory]
    [InlineData("part,kind,name,,\nF1,fuse,Lamp fuse,,x", "table.column-nameless")]
    [InlineData("part,kind,Art\nF1,fuse,Sicherung", "table.column-second")]
    [InlineData("part,kind\nF 1 x,fuse", "table.renamed")]
    public void What_a_table_of_parts_leaves_open_is_said(string parts, string code) =>
        Assert.Contains(TableImport.Read("from,to\nBAT.pos,F1.1", parts, "t").Remarks, r => r.Table == TableKind.Parts && r.Message.Code == code);

    private static readonly string[] Pieces =
    [
        "from", "to", "gauge", "length", ",", ";", "\t", "\n", "\r\n", "\"", "\"\"", "BAT.pos", "F1", "K2.30", "-S1:1", "C1.3a", "C1.3", "31", "B+", "2,5", "14", "AWG",
        "mm²", "1e999", "NaN", "\ufeff", "\ud800", "\0", "->", "wire", "#", "{", "}", "[", "kind: x", "direct", "rot/weiß", "…", " ", "'", "K2-30", "part", "kind", "0",
    ];

    [Fact]
    public void Whatever_a_table_says_it_is_read_and_what_comes_is_a_sheet_or_a_reason() =>
        Gen.Select(Gen.Int[0, Pieces.Length - 1].Array[0, 60], Gen.Int[0, Pieces.Length - 1].Array[0, 20], Gen.Bool).Sample((wires, parts, head) =>
        {
            var made = TableImport.Read(
                (head ? "from,to,gauge,length,colour\n" : "") + string.Concat(wires.Select(i => Pieces[i])), "part,kind,name\n" + string.Concat(parts.Select(i => Pieces[i])), "t");
            if (made.Sheet is null)
            {
                Assert.Contains(made.Remarks, r => r.Severity == ProblemSeverity.Error);
            }
            else
            {
                SheetReader.Read(made.Sheet);
            }
        }, iter: 3000);

    /// <summary>Every row is a wire, a joint, or has a remark of its own: none is lost.</summary>
    [Fact]
    public void No_row_is_lost() =>
        Gen.Int[0, Pieces.Length - 1].Array[4].Array[1, 12].Sample(rows =>
        {
            var cells = rows.Select(r => r.Select(i => Pieces[i].Replace("\"", "", StringComparison.Ordinal).Replace("\n", "", StringComparison.Ordinal).Replace("\r", "", StringComparison.Ordinal)).ToArray())
                .Where(r => r.Any(c => !string.IsNullOrWhiteSpace(c))).ToList();
            var made = TableImport.Read("from,to,gauge,length\n" + string.Join('\n', cells.Select(r => string.Join(',', r.Select(c => $"\"{c}\"")))), null, "t");
            var left = made.Remarks.Where(r => (r.Severity == ProblemSeverity.Error || r.Message.Code == "table.row-twice") && r.Line > 1).Select(r => r.Line).Distinct().Count();
            Assert.Equal(cells.Count, made.Wires + made.Joints + left);
        }, iter: 500);
}
