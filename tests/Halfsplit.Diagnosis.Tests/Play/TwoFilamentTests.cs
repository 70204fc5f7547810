using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Play;

/// <summary>A lamp with two filaments is judged by the one that the complaint is about.</summary>
public sealed class TwoFilamentTests
{
    private static Investigation MainBeam()
    {
        var circuit = ShippedSheets.Load("auxiliary-lamps");
        return Investigation.Open(circuit, circuit.Complaints.First(c => c.Name == "right main beam dark"));
    }

    [Fact]
    public void Its_volts_are_proven_where_that_filament_is_fed()
    {
        var investigation = MainBeam();
        var renewed = Check.Create(
            CheckKind.Repair, CheckSubject.Repair, new Arrangement(CheckCatalog.RestCondition(investigation.Circuit)),
            new Probe(Instrument.Eye, null, null, "F24"), "replace F24");
        investigation.Record("0", renewed, new ReadingParse.Word(AnswerWord.Done));
        investigation.Record("1", investigation.Next().Check!, new ReadingParse.Word(AnswerWord.Bright));

        Assert.Equal("proof volts C4.2b C4.3b | main beam", investigation.Next().Check!.Id);
    }

    [Fact]
    public void A_lamp_can_be_put_in_place_of_either() => Assert.All(
        (string[])["lamp 55 W C4.1a C4.3a of RM | main beam; unplug C4", "lamp 55 W C4.2a C4.3a of RM | main beam; unplug C4"],
        id => Assert.NotNull(MainBeam().FindCheck(id)));
}
