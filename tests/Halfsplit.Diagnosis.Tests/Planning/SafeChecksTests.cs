using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Readings;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Planning;

public sealed class SafeChecksTests
{
    /// <summary>
    /// The checks that tell most per minute would put a starter's amps through a jumper: the ones behind them are asked for,
    /// and the job is not handed over.
    /// </summary>
    [Fact]
    public void Where_the_best_checks_may_not_be_done_others_are_asked_for()
    {
        var circuit = ShippedSheets.Load("starter-24v");
        var investigation = Investigation.Open(circuit, circuit.Complaints.First(c => c.Name == "starter is silent"));
        void Read(string id, ReadingValue value) => investigation.Record(id, investigation.FindCheck(id)!, value);
        Read("work of ST | cranking", new ReadingParse.Word(AnswerWord.Dead));
        Read("volts BAT.pos BAT.neg | key off", new ReadingParse.Number(25.27, Quantity.Volts, 0.01));
        Read("amps-clamp of battery-ground | lamp on", new ReadingParse.Number(3.02, Quantity.Amperes, 0.01));
        Read("amps-clamp of frame-cable | button start", new ReadingParse.Number(0.14, Quantity.Amperes, 0.01));

        var step = investigation.Next();

        Assert.NotNull(step.Check);
        Assert.True(step.Plan!.Steps.Count(s => s.Check is not null) >= 4);
        Assert.NotEmpty(investigation.RankedNow());
    }
}
