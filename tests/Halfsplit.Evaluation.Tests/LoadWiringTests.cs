using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Evaluation.Play;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;
using Xunit;

namespace Halfsplit.Evaluation.Tests;

/// <summary>Who works by a fixed or a skilled order follows the load's wires; a player who could not would be no rival.</summary>
public sealed class LoadWiringTests
{
    public static TheoryData<string> Sheets => [.. ShippedSheets.Names];

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Every_load_complained_of_can_be_followed_to_the_battery_and_back(string sheet)
    {
        var circuit = ShippedSheets.Load(sheet);
        foreach (var complaint in circuit.Complaints)
        {
            var wiring = Of(circuit, complaint);
            var network = wiring.Network;

            Assert.Equal(network.NodeOf(new TerminalName(circuit.Battery.Id, "pos")), wiring.Feed.Nodes[^1]);
            Assert.NotEmpty(wiring.Return.Branches);
            // What comes back to the battery does not go out again.
            Assert.DoesNotContain(wiring.Return.Owners, o => circuit.Find(o) is Fuse);
        }
    }

    [Theory]
    [InlineData("headlamps-ground-side", "left dipped beam is dark", "30", "56b")]
    [InlineData("power-window", "window does not close", "neg", "pos")]
    [InlineData("central-locking", "doors lock but do not unlock", "neg", "pos")]
    [InlineData("cooling-fan", "fan never runs", "pos", "neg")]
    public void The_feed_is_where_the_current_comes_in(string sheet, string complaint, string feed, string back)
    {
        var circuit = ShippedSheets.Load(sheet);

        var wiring = Of(circuit, circuit.Complaints.First(c => c.Name == complaint));

        Assert.Equal((feed, back), (wiring.Positive.Name, wiring.Negative.Name));
    }

    [Theory]
    [InlineData("daytime-lamps", "daytime lamps do not come on", "ENG~BODY")]
    [InlineData("split-charge", "fridge stays warm while driving", "ENG~BODY")]
    public void With_the_engine_running_the_way_back_ends_at_the_alternator(string sheet, string complaint, string last)
    {
        var circuit = ShippedSheets.Load(sheet);

        var wiring = Of(circuit, circuit.Complaints.First(c => c.Name == complaint));

        Assert.Equal(last, wiring.Return.Owners.Last());
    }

    private static LoadWiring Of(Circuit circuit, Complaint complaint) => new(new CircuitSimulator(NetworkCompiler.Compile(circuit)), complaint);
}
