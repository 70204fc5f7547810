using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

public sealed class SpiceTests : IDisposable
{
    private readonly Shell _shell = new();

    [Fact]
    public void The_text_is_a_netlist_with_a_map_in_comments()
    {
        var lines = Shell.Expect(0, _shell.Run("spice", "pump-feed", "-c", "priming")).Output.Split('\n');

        Assert.StartsWith("* ", lines[0], StringComparison.Ordinal);
        Assert.Contains("* terminal BAT.neg is node 0", lines);
        Assert.Contains(lines, l => l.StartsWith("* terminal C3.4a is node n", StringComparison.Ordinal));
        Assert.Equal(".end", lines[^2]);
        // Nothing but comments, elements and directives.
        Assert.All(lines[..^1], l => Assert.Contains(l[0], "*RVI."));
    }

    [Fact]
    public void The_meter_lies_between_the_two_terminals()
    {
        var json = Shell.Expect(0, _shell.Run("spice", "pump-feed", "-c", "priming", "-r", "C3.4,BAT.neg", "-m", "volts-low-impedance", "--json")).Json;
        var node = json.GetProperty("nodeOfTerminal").GetProperty("C3.4a").GetString();

        Assert.Contains($"Rmeter {node} 0 3000\n", json.GetProperty("netlist").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_meter_with_a_source_of_its_own_is_refused() =>
        Shell.Expect(2, _shell.Run("spice", "pump-feed", "-c", "key off", "-r", "C3.4,BODY", "-m", "ohms"));

    public void Dispose() => _shell.Dispose();
}
