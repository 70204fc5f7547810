using Xunit;
using static Halfsplit.Simulation.Tests.Networks.WorkedCircuit;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>
/// Worked examples of "Lessons in Electric Circuits", volume I (copyleft), by chapter and section. The
/// printed digits are the book's; where it prints only results, the netlist is that of its figure.
/// </summary>
public sealed class LessonsInElectricCircuitsTests
{
    [Fact]
    public void Chapter_5_simple_series()
    {
        var solved = new WorkedCircuit().Source("1", 9).Resistor("1", "2", 3e3).Resistor("2", "3", 10e3).Resistor("3", "0", 5e3).Solve();
        AssertPrinted("1.500", solved.Volts("1", "2"));
        AssertPrinted("5.000", solved.Volts("2", "3"));
        AssertPrinted("2.500", solved.Volts("3"));
        AssertPrinted("0.5E-3", solved.Amperes("1", "2", 3e3));
    }

    [Fact]
    public void Chapter_5_simple_parallel()
    {
        var solved = new WorkedCircuit().Source("1", 9).Resistor("1", "0", 10e3).Resistor("1", "0", 2e3).Resistor("1", "0", 1e3).Solve();
        AssertPrinted("0.9E-3", solved.Amperes("1", "0", 10e3));
        AssertPrinted("4.5E-3", solved.Amperes("1", "0", 2e3));
        AssertPrinted("9.0E-3", solved.Amperes("1", "0", 1e3));
    }

    [Fact]
    public void Chapter_6_voltage_divider()
    {
        var solved = new WorkedCircuit().Source("1", 45).Resistor("1", "2", 5e3).Resistor("2", "3", 10e3).Resistor("3", "0", 7.5e3).Solve();
        AssertPrinted("10", solved.Volts("1", "2"));
        AssertPrinted("20", solved.Volts("2", "3"));
        AssertPrinted("15", solved.Volts("3"));
        AssertPrinted("2E-3", solved.Amperes("1", "2", 5e3));
    }

    [Fact]
    public void Chapter_6_voltage_law_with_two_supplies_and_a_common_ground()
    {
        // The book gives the drops alone (15, 20, 13 and 12 V); these ohms make them at one ampere.
        var solved = new WorkedCircuit()
            .Source("1", 35).Resistor("1", "3", 15).Resistor("3", "0", 20)
            .Source("6", -25).Resistor("0", "4", 12).Resistor("4", "6", 13)
            .Solve();
        AssertPrinted("-32", solved.Volts("4", "3"));
    }

    [Fact]
    public void Chapter_7_analysis_technique()
    {
        var solved = new WorkedCircuit()
            .Source("1", 24).Resistor("1", "4", 100).Resistor("1", "4", 250).Resistor("4", "0", 350).Resistor("4", "0", 200)
            .Solve();
        AssertPrinted("8.627", solved.Volts("1", "4"));
        AssertPrinted("15.37", solved.Volts("4"));
        AssertPrinted("86.27E-3", solved.Amperes("1", "4", 100));
        AssertPrinted("34.51E-3", solved.Amperes("1", "4", 250));
        AssertPrinted("43.92E-3", solved.Amperes("4", "0", 350));
        AssertPrinted("76.86E-3", solved.Amperes("4", "0", 200));
        AssertPrinted("120.78E-3", solved.Amperes("1", "4", 100) + solved.Amperes("1", "4", 250));
        AssertPrinted("198.70", 24 / (solved.Amperes("1", "4", 100) + solved.Amperes("1", "4", 250)));
    }

    [Fact]
    public void Chapter_8_voltmeter_impact()
    {
        var unloaded = new WorkedCircuit().Source("1", 24).Resistor("1", "2", 250e6).Resistor("2", "0", 250e6);
        AssertPrinted("12", unloaded.Solve().Volts("2"));
        var loaded = unloaded.Resistor("2", "0", 10e6).Solve();
        AssertPrinted("0.8889", loaded.Volts("2"));
        AssertPrinted("23.1111", loaded.Volts("1", "2"));
        var lower = new WorkedCircuit().Resistor("2", "0", 250e6).Resistor("2", "0", 10e6).Solve();
        AssertPrinted("9.615E6", lower.OhmsBetween("2", "0"));
    }

    [Fact]
    public void Chapter_8_ammeter_impact()
    {
        var alone = new WorkedCircuit().Source("1", 2).Resistor("1", "0", 3).Resistor("1", "0", 1.5).Solve();
        AssertPrinted("666.7E-3", alone.Amperes("1", "0", 3));
        AssertPrinted("1.333", alone.Amperes("1", "0", 1.5));
        var inFirst = new WorkedCircuit().Source("1", 2).Resistor("1", "2", 3).Resistor("2", "0", 0.5).Resistor("1", "0", 1.5).Solve();
        AssertPrinted("571.43E-3", inFirst.Amperes("2", "0", 0.5));
        var inSecond = new WorkedCircuit().Source("1", 2).Resistor("1", "0", 3).Resistor("1", "2", 1.5).Resistor("2", "0", 0.5).Solve();
        AssertPrinted("1.000", inSecond.Amperes("2", "0", 0.5));
    }

    [Fact]
    public void Chapter_8_ammeter_design_with_a_shunt()
    {
        var solved = new WorkedCircuit().Source("1", 12).Resistor("1", "2", 1).Resistor("2", "0", 15e3).Solve();
        AssertPrinted("7.999E-04", solved.Volts("1", "2"));
    }

    [Fact]
    public void Chapter_10_branch_current_with_two_sources()
    {
        var solved = TwoSources().Resistor("2", "0", 2).Solve();
        AssertPrinted("20", solved.Volts("1", "2"));
        AssertPrinted("8", solved.Volts("2"));
        AssertPrinted("1", solved.Volts("2", "3"));
        AssertPrinted("5", solved.Amperes("1", "2", 4));
        AssertPrinted("4", solved.Amperes("2", "0", 2));
        AssertPrinted("1", solved.Amperes("2", "3", 1));
    }

    [Fact]
    public void Chapter_10_thevenin_norton_and_most_power()
    {
        AssertPrinted("11.2", TwoSources().Solve().Volts("2"));
        AssertPrinted("0.8", TwoSources().Solve().OhmsBetween("2", "0"));
        AssertPrinted("14", TwoSources().Resistor("2", "0", 1e-12).Solve().Amperes("2", "0", 1e-12));
        AssertPrinted("37.11", Power(0.5));
        AssertPrinted("39.2", Power(0.8));
        AssertPrinted("38.22", Power(1.1));

        static double Power(double ohms)
        {
            var volts = TwoSources().Resistor("2", "0", ohms).Solve().Volts("2");
            return volts * volts / ohms;
        }
    }

    [Fact]
    public void Chapter_10_unbalanced_bridge()
    {
        var solved = new WorkedCircuit()
            .Source("1", 24).Resistor("1", "2", 150).Resistor("1", "3", 50).Resistor("2", "3", 100).Resistor("2", "0", 300).Resistor("3", "0", 250)
            .Solve();
        AssertPrinted("6.345", solved.Volts("1", "2"));
        AssertPrinted("4.690", solved.Volts("1", "3"));
        AssertPrinted("1.655", solved.Volts("3", "2"));
        AssertPrinted("17.66", solved.Volts("2"));
        AssertPrinted("19.31", solved.Volts("3"));
        AssertPrinted("42.299E-3", solved.Amperes("1", "2", 150));
        AssertPrinted("93.793E-3", solved.Amperes("1", "3", 50));
        AssertPrinted("-16.552E-3", solved.Amperes("2", "3", 100));
        AssertPrinted("58.851E-3", solved.Amperes("2", "0", 300));
        AssertPrinted("77.241E-3", solved.Amperes("3", "0", 250));
        AssertPrinted("136.092E-3", solved.Amperes("1", "2", 150) + solved.Amperes("1", "3", 50));
    }

    [Fact]
    public void Chapter_10_delta_and_star()
    {
        var solved = new WorkedCircuit()
            .Source("1", 10).Resistor("1", "2", 12).Resistor("1", "3", 18).Resistor("2", "3", 6).Resistor("2", "0", 18).Resistor("3", "0", 12)
            .Solve();
        AssertPrinted("4.706", solved.Volts("1", "2"));
        AssertPrinted("5.294", solved.Volts("1", "3"));
        AssertPrinted("0.5882", solved.Volts("2", "3"));
        AssertPrinted("5.294", solved.Volts("2"));
        AssertPrinted("4.706", solved.Volts("3"));
    }

    [Fact]
    public void Chapter_10_node_voltage()
    {
        var solved = new WorkedCircuit()
            .Source("11", 10).Source("22", -4)
            .Resistor("11", "1", 2).Resistor("1", "0", 4).Resistor("1", "2", 2.5).Resistor("2", "0", 5).Resistor("2", "22", 1)
            .Solve();
        AssertPrinted("3.809524", solved.Volts("1"));
        AssertPrinted("-1.547619", solved.Volts("2"));
    }

    [Theory]
    [InlineData(13.2, 0.1, "13.187")]
    [InlineData(13.0, 5, "12.381")]
    [InlineData(11.5, 20, "9.583")]
    [InlineData(7.5, 50, "5")]
    public void Chapter_11_battery_ratings(double openVolts, double innerOhms, string loadedVolts)
    {
        var solved = new WorkedCircuit().Source("1", openVolts).Resistor("1", "2", innerOhms).Resistor("2", "0", 100).Solve();
        AssertPrinted(loadedVolts, solved.Volts("2"));
    }

    [Fact]
    public void Chapter_11_battery_construction()
    {
        var solved = new WorkedCircuit().Source("1", 10).Resistor("1", "2", 0.2).Resistor("2", "0", 1).Solve();
        AssertPrinted("8.333", solved.Amperes("2", "0", 1));
        AssertPrinted("8.333", solved.Volts("2"));
        var shorted = new WorkedCircuit().Source("1", 10).Resistor("1", "2", 0.2).Resistor("2", "0", 1e-12).Solve();
        AssertPrinted("50", shorted.Amperes("1", "2", 0.2));
    }

    [Fact]
    public void Chapter_12_temperature_coefficient_of_feed_and_return()
    {
        var cold = Lamp(15).Solve();
        AssertPrinted("0.75", cold.Volts("1", "2"));
        AssertPrinted("12.5", cold.Volts("2", "3"));
        AssertPrinted("0.75", cold.Volts("3"));

        // 15 Ω at 20 °C, α = 0.004041 per kelvin as the book has it, at 35 °C.
        var warmOhms = 15 * (1 + (0.004041 * 15));
        var warm = Lamp(warmOhms).Solve();
        AssertPrinted("0.79", warm.Volts("1", "2"));
        AssertPrinted("12.42", warm.Volts("2", "3"));
        AssertPrinted("0.79", warm.Volts("3"));
        AssertPrinted("49.677E-3", warm.Amperes("1", "2", warmOhms));

        static WorkedCircuit Lamp(double wire) =>
            new WorkedCircuit().Source("1", 14).Resistor("1", "2", wire).Resistor("2", "3", 250).Resistor("3", "0", wire);
    }

    private static WorkedCircuit TwoSources() =>
        new WorkedCircuit().Source("1", 28).Source("3", 7).Resistor("1", "2", 4).Resistor("2", "3", 1);
}
