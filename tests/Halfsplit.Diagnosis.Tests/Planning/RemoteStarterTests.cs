using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Diagnosis.Tests.Play;
using Halfsplit.Simulation.Compiled;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Planning;

public sealed class RemoteStarterTests
{
    private static readonly DiagnosisOptions Alone = DiagnosisOptions.Default;
    private static readonly DiagnosisOptions WithSwitch = Alone with { RemoteStarter = true };
    private static readonly DiagnosisOptions WithHelper = Alone with { Helper = true };

    private static ImmutableArray<Check> Checks(Circuit circuit, string condition) =>
        [.. circuit.Complaints
            .SelectMany(c => CheckCatalog.Generate(NetworkCompiler.Compile(circuit), c, Alone, []))
            .DistinctBy(c => c.Id)
            .Where(c => c.Arrangement.Condition == condition)];

    private static Effort EffortOf(Circuit circuit, DiagnosisOptions options, Check check) =>
        Effort.Of(circuit, options, Position.Start(circuit), check);

    private static bool Uses(Circuit circuit, DiagnosisOptions options, Check check)
    {
        var isStep = EffortOf(circuit, options, check).Steps.Any(s => s.Code == "step.condition-remote");
        var isWarned = Cautions.For(circuit, options, Position.Start(circuit), check).Any(c => c.Code == "caution.remote-starter");
        Assert.Equal(isStep, isWarned);
        return isStep;
    }

    private static Circuit Changed(string sheet, string from, string to)
    {
        var text = ShippedSheets.Text(sheet)!;
        Assert.Contains(from, text, StringComparison.Ordinal);
        return SheetReader.Read(text.Replace(from, to, StringComparison.Ordinal)).Circuit!;
    }

    [Theory]
    [InlineData("pump-control-module")]
    [InlineData("pump-two-speed")]
    [InlineData("ignition-coil")]
    [InlineData("injectors")]
    public void A_reading_while_cranking_takes_fewer_minutes_than_alone_and_more_than_with_a_helper(string sheet)
    {
        var circuit = ShippedSheets.Load(sheet);
        var checks = Checks(circuit, "cranking");

        Assert.NotEmpty(checks);
        foreach (var check in checks)
        {
            var (helped, pressed, alone) = (
                EffortOf(circuit, WithHelper, check).Minutes, EffortOf(circuit, WithSwitch, check).Minutes, EffortOf(circuit, Alone, check).Minutes);
            Assert.True(helped < pressed && pressed < alone, $"{check.Id}: {helped} {pressed} {alone}");
            Assert.Equal(pressed, Effort.MinutesOf(circuit, WithSwitch, Position.Start(circuit), check));
            Assert.True(Uses(circuit, WithSwitch, check), check.Id);
            Assert.False(Uses(circuit, Alone, check), check.Id);
        }
    }

    [Fact]
    public void Who_has_a_helper_too_leaves_the_key_to_the_helper()
    {
        var circuit = ShippedSheets.Load("pump-control-module");
        foreach (var check in Checks(circuit, "cranking"))
        {
            var (both, helped) = (EffortOf(circuit, WithHelper with { RemoteStarter = true }, check), EffortOf(circuit, WithHelper, check));
            Assert.Equal(helped.Minutes, both.Minutes);
            Assert.Equal(helped.Steps.Select(s => s.Code), both.Steps.Select(s => s.Code));
            Assert.False(Uses(circuit, WithHelper with { RemoteStarter = true }, check));
        }
    }

    [Fact]
    public void A_condition_that_only_ends_by_itself_takes_what_it_took()
    {
        var circuit = ShippedSheets.Load("pump-control-module");
        var checks = Checks(circuit, "priming");

        Assert.NotEmpty(checks);
        Assert.All(checks, c => Assert.Equal(EffortOf(circuit, Alone, c).Minutes, EffortOf(circuit, WithSwitch, c).Minutes));
        Assert.All(checks, c => Assert.False(Uses(circuit, WithSwitch, c)));
    }

    /// <summary>The start position feeds something, cuts something off, or the starter itself is looked at.</summary>
    [Theory]
    [InlineData("pump-feed")]
    [InlineData("pump-oil-pressure")]
    [InlineData("wipers")]
    [InlineData("accessory-socket")]
    [InlineData("starter")]
    [InlineData("motorcycle-start")]
    public void Where_the_start_position_matters_it_is_left_alone(string sheet)
    {
        var circuit = ShippedSheets.Load(sheet);
        var brief = circuit.Conditions.Where(c => c.NeedsHelper).ToList();

        Assert.NotEmpty(brief);
        foreach (var condition in brief)
        {
            // A catalogue may have no check in this condition; a look at a load can be asked for in any.
            var look = CheckCatalog.Reproduce(circuit, circuit.Complaints[0] with { Condition = condition.Name });
            foreach (var check in Checks(circuit, condition.Name).Append(look))
            {
                Assert.False(Uses(circuit, WithSwitch, check), check.Id);
                Assert.Equal(EffortOf(circuit, Alone, check).Minutes, EffortOf(circuit, WithSwitch, check).Minutes);
            }
        }
    }

    [Theory]
    [InlineData("positions: { off: [], on: [30-15], start: [30-15] }", "positions: { off: [], on: [30-15], start: [15-30] }", true)]
    [InlineData("positions: { off: [], on: [30-15], start: [30-15] }", "positions: { off: [], on: [30-15], start: [] }", false)]
    // A lead could be put on a bare terminal 50, and would find the key's volts missing there.
    [InlineData("positions: { off: [], on: [30-15], start: [30-15] }", "positions: { off: [], on: [30-15], start: [30-15, 30-50] }", false)]
    [InlineData("positions: { off: [], on: [30-15], start: [30-15] }", "probe: no\n    positions: { off: [], on: [30-15], start: [30-15, 30-50] }", true)]
    [InlineData("after: key on, IGN: start, starter", "IGN: start, starter", false)]
    [InlineData("after: key on, IGN: start, starter", "after: key off, IGN: start, starter", false)]
    [InlineData("after: key on, IGN: start, starter", "after: key on, IGN: start, S5: on, starter", false)]
    [InlineData("after: key on, IGN: start, starter", "after: key on, IGN: start, ECU.fan-low: low, starter", true)]
    public void Only_what_the_key_switches_on_the_sheet_counts(string from, string to, bool uses)
    {
        var circuit = Changed("cooling-fan", from, to);
        var look = CheckCatalog.Reproduce(circuit, circuit.Complaints[0] with { Condition = "cranking" });

        Assert.Equal(uses, Uses(circuit, WithSwitch, look));
    }

    [Fact]
    public void Where_fuel_is_smelt_nobody_clips_to_the_battery()
    {
        var circuit = ShippedSheets.Load("pump-control-module");
        Assert.All(Checks(circuit, "cranking"), c => Assert.False(Uses(circuit, WithSwitch with { SmellOfFuelOrImpact = true }, c)));
    }

    [Theory]
    [InlineData(true, "remote starter switch", "parking brake")]
    [InlineData(false, "Fernstartschalter", "Feststellbremse")]
    public void The_step_says_where_the_key_stays_and_the_cautions_come_with_it(bool isEnglish, string name, string brake)
    {
        var circuit = ShippedSheets.Load("pump-control-module");
        var check = Checks(circuit, "cranking")[0];
        var catalog = new TextCatalog(isEnglish ? Language.English : Language.German, DiagnosisTexts.Source);
        var step = Assert.Single(EffortOf(circuit, WithSwitch, check).Steps, s => s.Code == "step.condition-remote");
        var cautions = Cautions.For(circuit, WithSwitch, Position.Start(circuit), check);

        Assert.Equal(["key on", "cranking"], step.Arguments);
        Assert.Contains(name, catalog.Say(step), StringComparison.Ordinal);
        Assert.Contains(cautions, c => c.Code == "caution.cranking");
        Assert.Contains(brake, catalog.Say(Assert.Single(cautions, c => c.Code == "caution.remote-starter")), StringComparison.Ordinal);
    }

    [Fact]
    public void Before_the_car_is_given_away_it_is_taken_off()
    {
        var circuit = ShippedSheets.Load("pump-control-module");
        var check = Checks(circuit, "cranking")[0];
        bool IsTakenOff(DiagnosisOptions options)
        {
            var job = Investigation.Open(circuit, circuit.Complaints[0], options);
            Assert.DoesNotContain(job.PutBackList, i => i.Id == "remote-starter-off");
            job.Record("1", check, new SimulatedCar(circuit, circuit.Complaints[0].Load, Game.Fault("C1.1:open")).Answer(check));
            return job.PutBackList.Any(i => i.Id == "remote-starter-off");
        }

        Assert.True(IsTakenOff(WithSwitch));
        Assert.False(IsTakenOff(Alone));
    }

    [Fact]
    public void Many_checks_take_what_each_by_itself_takes()
    {
        var circuit = ShippedSheets.Load("pump-control-module");
        var start = Position.Start(circuit);
        var many = new ManyMinutes(circuit, WithSwitch).FewestFirst(start, Checks(circuit, "cranking")).ToList();

        Assert.NotEmpty(many);
        Assert.All(many, m => Assert.Equal(Effort.WeighedMinutesOf(circuit, WithSwitch, start, m.Check), m.Minutes, 1e-9));
    }
}
