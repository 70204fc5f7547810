using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Tests.Play;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Explaining;

public sealed class NotProvenTests
{
    private static Investigation AtTheFinding(string fault, string sheet = "pump-feed", DiagnosisOptions? options = null)
    {
        var circuit = ShippedSheets.Load(sheet);
        var investigation = Investigation.Open(circuit, circuit.Complaints[0], options);
        var car = new SimulatedCar(circuit, circuit.Complaints[0].Load, Game.Fault(fault));
        for (var i = 0; i < 30 && investigation.Next() is { Check: { } check, Finding: null }; i++)
        {
            investigation.Record($"{i}", check, car.Answer(check));
        }

        return investigation;
    }

    [Theory]
    [InlineData("K2:contact-open")]
    [InlineData("ECU.pump-drive:output-off")]
    public void Who_is_alive_beside_the_finding_is_told_with_what_would_part_them(string fault)
    {
        var investigation = AtTheFinding(fault);
        var finding = investigation.PresentFinding()!;
        var open = investigation.NotProven();
        var offered = CheckCatalog.Generate(investigation.Network, investigation.Complaint, investigation.Options, []);

        Assert.Equal(finding.NotCleared.Where(s => !s.Suspect.IsNone).Take(6).Select(s => s.Suspect.Id), open.Select(o => o.Rival.Suspect.Id));
        Assert.All(open, o => Assert.Equal(o.PartedBy is null || o.Lacks.Length > 0, o.IsOutOfReach));
        Assert.All(open.Where(o => !o.IsOutOfReach), o => Assert.Contains(o.PartedBy, offered));
        Assert.All(open.Where(o => o.Lacks.Length > 0), o => Assert.DoesNotContain(o.PartedBy, offered));
    }

    // A fuse that was looked at, a relay that was on the bench, a plug that was felt: to name that again as what would tell
    // more helps nobody.
    [Theory]
    [InlineData("F7:open", "cooling-fan")]
    [InlineData("K6:open", "cooling-fan")]
    [InlineData("C1:open", "wipers")]
    public void What_was_read_already_is_not_named_as_what_would_tell_more(string fault, string sheet)
    {
        var investigation = AtTheFinding(fault, sheet);

        var open = investigation.NotProven();

        Assert.NotEmpty(open);
        Assert.DoesNotContain(open, o => o.PartedBy is { } check && investigation.Observations.Any(r => r.Check.Id == check.Id));
    }

    [Fact]
    public void What_only_another_relay_would_tell_lacks_one()
    {
        var open = AtTheFinding("K8:contact-resistive:0.4", "headlamps").NotProven();

        Assert.Contains(open, o => o.Rival.Suspect.Id == "K8.30 resistive" && o.Lacks.Any(l => l.Code == "lacks.spare-relay"));
        var equipped = AtTheFinding(
            "K8:contact-resistive:0.4", "headlamps", DiagnosisOptions.Default with { HasSpareRelay = true });
        Assert.DoesNotContain(equipped.NotProven(), o => o.Lacks.Any(l => l.Code == "lacks.spare-relay"));
    }

    [Fact]
    public void What_no_check_would_tell_is_said_so()
    {
        // A fuse that blew of itself and one that a seized fan blew look the same until a new one is in.
        var open = AtTheFinding("FAN:seized", "cooling-fan").NotProven();

        Assert.Contains(open, o => o is { Rival.Suspect.Id: "F7 open", PartedBy: null, IsOutOfReach: true });
    }
}
