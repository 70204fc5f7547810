using Xunit;
using static Halfsplit.Simulation.Tests.Networks.WorkedCircuit;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>Worked examples of US Government training manuals and handbooks, named beside each.</summary>
public sealed class PublicManualExamplesTests
{
    // Navy Electricity and Electronics Training Series, module 1, chapter 3, a practical voltage divider (the series is
    // named from memory). Both loads draw a fixed current.
    [Fact]
    public void Navy_practical_voltage_divider()
    {
        var solved = new WorkedCircuit()
            .Source("1", 190.5).Resistor("1", "2", 75).Resistor("2", "3", 500).Resistor("3", "0", 1500)
            .Current("2", -0.1).Current("3", -0.21)
            .Solve();
        AssertPrinted("165", solved.Volts("2"));
        AssertPrinted("45", solved.Volts("3"));
        AssertPrinted("30E-3", solved.Amperes("3", "0", 1500));
        AssertPrinted("340E-3", solved.Amperes("1", "2", 75));
        AssertPrinted("120", solved.Volts("2", "3"));
        AssertPrinted("25.5", solved.Volts("1", "2"));
    }

    // DOE Fundamentals Handbook, Electrical Science, volume 1 (DOE-HDBK-1011/1), ES-02 pages 27 and 28, example 2.
    [Fact]
    public void Energy_handbook_three_in_series_on_120_volts()
    {
        var solved = new WorkedCircuit().Source("1", 120).Resistor("1", "2", 40).Resistor("2", "3", 60).Resistor("3", "0", 100).Solve();
        AssertPrinted("24", solved.Volts("1", "2"));
        AssertPrinted("36", solved.Volts("2", "3"));
        AssertPrinted("60", solved.Volts("3"));
        AssertPrinted("0.6", solved.Amperes("3", "0", 100));
        var passive = new WorkedCircuit().Resistor("1", "2", 40).Resistor("2", "3", 60).Resistor("3", "0", 100).Solve();
        AssertPrinted("200", passive.OhmsBetween("1", "0"));
    }

    // The same handbook, page 27, example 1: half an ampere through 50, 75 and 100 ohms.
    [Fact]
    public void Energy_handbook_three_in_series_at_half_an_ampere()
    {
        var solved = new WorkedCircuit().Current("1", 0.5).Resistor("1", "2", 50).Resistor("2", "3", 75).Resistor("3", "0", 100).Solve();
        AssertPrinted("225", solved.OhmsBetween("1", "0"));
        AssertPrinted("112.5", solved.Volts("1"));
    }

    // US Army subcourse OD1633, lesson 1, page 43, figure 24 (it prints the substitution into the formula).
    [Fact]
    public void Army_subcourse_total_volts_in_series()
    {
        var solved = new WorkedCircuit().Current("1", 2).Resistor("1", "2", 20).Resistor("2", "3", 30).Resistor("3", "0", 50).Solve();
        AssertPrinted("200", solved.Volts("1"));
    }

    // US Army subcourse OD1633, lesson 1, figure 50.
    [Fact]
    public void Army_subcourse_two_in_parallel()
    {
        var solved = new WorkedCircuit().Source("1", 30).Resistor("1", "0", 3).Resistor("1", "0", 6).Solve();
        AssertPrinted("10", solved.Amperes("1", "0", 3));
        AssertPrinted("5", solved.Amperes("1", "0", 6));
        AssertPrinted("15", solved.Amperes("1", "0", 3) + solved.Amperes("1", "0", 6));
        var passive = new WorkedCircuit().Resistor("1", "0", 3).Resistor("1", "0", 6).Solve();
        AssertPrinted("2", passive.OhmsBetween("1", "0"));
    }

    // US Army TM 9-8000, Principles of Automotive Vehicles, text to figure 11-12: what added resistance does.
    [Theory]
    [InlineData(6, "2")]
    [InlineData(8, "1.5")]
    public void Army_manual_added_resistance(double ohms, string amperes)
    {
        var solved = new WorkedCircuit().Source("1", 12).Resistor("1", "2", ohms / 2).Resistor("2", "0", ohms / 2).Solve();
        AssertPrinted(amperes, solved.Amperes("1", "2", ohms / 2));
    }
}
