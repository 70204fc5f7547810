using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Coverage;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Diagnosis.Tests.Play;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Explaining;

public sealed class CoverageTests
{
    private static readonly Investigation Headlamps = Open(DiagnosisOptions.Default);
    private static readonly CoverageReport Usual = Headlamps.Coverage();

    private static Investigation Open(DiagnosisOptions options)
    {
        var circuit = ShippedSheets.Load("headlamps");
        return Investigation.Open(circuit, circuit.Complaints[0], options);
    }

    [Fact]
    public void Every_suspect_is_alone_or_in_a_group()
    {
        Assert.Equal(Headlamps.Suspects.Length - 1, Usual.Suspects);
        var grouped = Usual.Groups.Where(g => !g.OnlyAtWorst).SelectMany(g => g.Suspects).Select(s => s.Id).ToList();
        Assert.Equal(grouped.Count, grouped.Distinct().Count());
        Assert.Equal(Usual.Suspects, Usual.Alone + grouped.Count);
        Assert.All(Usual.Groups, g => Assert.True(g.Suspects.Length > 1));
    }

    /// <summary>Plain opens and shorts have one degree, so that what the group rests on can be played through.</summary>
    [Fact]
    public void Those_of_a_group_give_the_same_volts_at_every_check()
    {
        static bool IsPlain(Suspect suspect) => suspect.Modes is [{ Severities.Length: 0 }];
        var pairs = Usual.Groups.Where(g => !g.OnlyAtWorst)
            .Select(g => g.Suspects.Where(IsPlain).ToList()).Where(g => g.Count > 1).ToList();
        var volts = CheckCatalog.Generate(Headlamps.Network, Headlamps.Complaint, DiagnosisOptions.Default, [])
            .Where(c => c.Subject == CheckSubject.Number && c.Probe.Instrument == Instrument.Volts && c.Arrangement.Jumpers.Length == 0)
            .ToList();

        Assert.NotEmpty(pairs);
        Assert.True(volts.Count > 100);
        Assert.All(pairs, group => Assert.All(volts, check => Assert.InRange(Apart(group[0], group[1], check), 0, 1.2)));
    }

    [Fact]
    public void Those_of_different_groups_differ_somewhere()
    {
        var volts = CheckCatalog.Generate(Headlamps.Network, Headlamps.Complaint, DiagnosisOptions.Default, [])
            .Where(c => c.Subject == CheckSubject.Number && c.Probe.Instrument == Instrument.Volts && c.Arrangement.Jumpers.Length == 0)
            .ToList();
        var open = Headlamps.Suspects.First(s => s.Suspect.Id == "G5 open").Suspect;
        var other = Headlamps.Suspects.First(s => s.Suspect.Id == "F21 open").Suspect;

        Assert.DoesNotContain(Usual.Groups, g => g.Suspects.Contains(open) && g.Suspects.Contains(other));
        Assert.Contains(volts, check => Apart(open, other, check) > 3);
    }

    [Fact]
    public void A_tool_that_is_named_as_lacking_parts_the_group_once_it_is_there()
    {
        var group = Usual.Groups.First(g => g.WouldPart is { } w && w.Lacks.Any(l => l.Code == "lacks.spare-relay"));
        var equipped = Open(DiagnosisOptions.Default with { HasSpareRelay = true }).Coverage();

        Assert.DoesNotContain(equipped.Groups, g => g.OnlyAtWorst == group.OnlyAtWorst && group.Suspects.All(g.Suspects.Contains));
    }

    [Fact]
    public void The_extra_point_shows_the_wire_and_the_joint_of_a_socket_apart()
    {
        var group = Usual.Groups.First(g => g.Suspects.Any(s => s.Id == "F2.2 open"));
        var point = group.ExtraPoint!;

        Assert.Contains(group.Suspects, s => s.Id == "F2.2~IGN.30 open");
        Assert.Equal("F2.2", point.Terminal.ToString());
        Assert.True(Apart(group.Suspects[0], group.Suspects[1], point.Check) > 6);
    }

    private static double Apart(Suspect one, Suspect other, Check check)
    {
        double Volts(Suspect suspect) => new SimulatedCar(
            Headlamps.Circuit, Headlamps.Complaint.Load, suspect.Modes[0].Faults()).Answer(check) is ReadingParse.Number number
                ? number.Value : double.NaN;
        return Math.Abs(Volts(one) - Volts(other));
    }
}
