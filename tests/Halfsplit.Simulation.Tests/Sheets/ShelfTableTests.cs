using System.Runtime.CompilerServices;
using System.Text;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Shelf;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Xunit;

namespace Halfsplit.Simulation.Tests.Sheets;

/// <summary>
/// The shelf's table says what the sheets say, and every load complained of works in the healthy car. With the environment
/// variable HALFSPLIT_APPROVE=1 the table is written anew.
/// </summary>
public sealed class ShelfTableTests
{
    /// <summary>A fuse carries the load if so much of the load's current runs through it.</summary>
    private const double MostOfIt = 0.5;

    public static TheoryData<string> Sheets => [.. ShippedSheets.Names];

    [Theory]
    [MemberData(nameof(Sheets))]
    public void What_people_complain_of_works_in_the_healthy_car(string sheet)
    {
        var circuit = ShippedSheets.Load(sheet);
        Assert.Empty(CircuitLint.Check(circuit).Where(p => p.Severity != ProblemSeverity.Note));
        Assert.NotEmpty(circuit.Complaints);
        foreach (var complaint in circuit.Complaints)
        {
            var point = Healthy(circuit, complaint.Condition);
            Assert.True(point.IsSteady, $"{complaint.Condition} finds no rest");

            // A load that is complained of as slow is so at its low speed too; dead is what it must not be.
            var expected = complaint.Is == LoadCondition.Weak ? [LoadCondition.Works] : new[] { LoadCondition.Works, LoadCondition.Weak };
            Assert.Contains(point.Load(complaint.Load).Condition, expected);
        }
    }

    [Fact]
    public void The_table_says_what_the_sheets_say()
    {
        var written = new StringBuilder("sheet,volts,title,summary,complaint,load,fuses\n");
        foreach (var sheet in ShippedSheets.Names)
        {
            var circuit = ShippedSheets.Load(sheet);
            var volts = ((Battery)circuit.Parts.Single(p => p is Battery)).NominalVolts;
            foreach (var complaint in circuit.Complaints)
            {
                written.AppendJoin(',', sheet, $"{volts:0}", Quoted(circuit.Title), Quoted(circuit.Summary ?? ""), Quoted(complaint.Name),
                    Quoted(circuit.Find(complaint.Load)!.Notes.Name ?? complaint.Load), Fuses(circuit, complaint)).Append('\n');
            }
        }

        if (Environment.GetEnvironmentVariable("HALFSPLIT_APPROVE") == "1")
        {
            File.WriteAllText(TableFile(), written.ToString());
        }

        Assert.Equal(written.ToString(), File.ReadAllText(TableFile()).Replace("\r\n", "\n", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_shipped_sheet_stands_on_the_shelf()
    {
        Assert.Equal(ShippedSheets.Names, DataFile.Read("shelf-systems.csv").Select(r => r.Text("sheet")).Order(StringComparer.Ordinal));
        Assert.Equal(ShippedSheets.Names, CircuitShelf.Complaints.Select(c => c.Sheet.Name).Distinct().Order(StringComparer.Ordinal));
    }

    private static OperatingPoint Healthy(Circuit circuit, string condition) =>
        new CircuitSimulator(NetworkCompiler.Compile(circuit)).Simulate(new Arrangement(condition), []);

    private static string Fuses(Circuit circuit, Complaint complaint)
    {
        var point = Healthy(circuit, complaint.Condition);
        var drawn = Math.Abs(point.Load(complaint.Load).Amps);
        return string.Join(' ', circuit.Parts.OfType<Fuse>()
            .Where(f => Math.Abs(point.FuseAmps(f.Id)) >= MostOfIt * drawn)
            .OrderBy(f => f.RatingAmps).ThenBy(f => f.Id, StringComparer.Ordinal).Select(f => $"{f.Id}={f.RatingAmps:0.#}"));
    }

    private static string Quoted(string text) =>
        text.Contains(',', StringComparison.Ordinal) ? $"\"{text}\"" : text;

    private static string TableFile([CallerFilePath] string caller = "") =>
        Path.Combine(Path.GetDirectoryName(caller)!, "../../../data/shelf.csv");
}
