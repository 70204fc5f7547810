using Halfsplit.Simulation.Tests.Judges;
using Xunit;

namespace Halfsplit.Cli.Tests.Circuits;

/// <summary>An outside simulator, given what <c>spice</c> prints, finds the volts that <c>predict</c> prints.</summary>
public sealed class SpiceAgreementTests
{
    [Theory]
    [Trait("Pace", "slow")]
    [InlineData("pump-feed", "priming")]
    [InlineData("pump-feed", "key off")]
    [InlineData("pump-feed", "priming", "-f", "G2:resistive:2")]
    [InlineData("pump-feed", "priming", "-f", "M1:shorted")]
    [InlineData("pump-feed", "key on", "--remove", "K2", "--jumper", "K2.30,K2.87")]
    [InlineData("pump-feed", "priming", "--unplug", "C3")]
    public void Agrees_with_the_prediction(string sheet, string condition, params string[] options)
    {
        string[] setup = [sheet, "-c", condition, .. options, "--json"];
        using var netlist = JsonTests.Json(["spice", .. setup]);
        using var predicted = JsonTests.Json(["predict", .. setup]);
        var nodes = netlist.RootElement.GetProperty("nodeOfTerminal").EnumerateObject()
            .ToDictionary(n => n.Name, n => n.Value.GetString()!, StringComparer.Ordinal);
        var names = nodes.Keys.ToList();

        var text = netlist.RootElement.GetProperty("netlist").GetString()!;
        var judged = NgSpice.Volts([new SpiceQuestion(text, [.. names.Select(n => nodes[n])])])[0];

        Assert.NotEmpty(names);
        for (var i = 0; i < names.Count; i++)
        {
            var volts = predicted.RootElement.GetProperty("volts").GetProperty(names[i]).GetDouble();
            Assert.True(
                Math.Abs(volts - judged[i]) <= (1e-6 * Math.Abs(judged[i])) + 10e-6, $"{names[i]}: {volts} here, {judged[i]} there");
        }
    }
}
