using System.Text.RegularExpressions;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Tests.Sheets;
using Xunit;

namespace Halfsplit.Simulation.Tests.Properties;

/// <summary>How a sheet is spelt changes nothing in the car: names of parts, order of parts and of wiring lines.</summary>
public sealed partial class SheetSpellingTests
{
    private const double Same = 1e-9;

    /// <summary>Every so many suspects are looked at.</summary>
    private const int Stride = 9;

    public static TheoryData<string> Sheets => ShelfChoice.Theory;

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Renaming_all_parts_changes_no_volts(string name)
    {
        var text = ShippedSheets.Text(name)!;
        var names = ShippedSheets.Load(name).Parts.Select(p => p.Id).Where(id => id != Metal.Body).ToArray();
        // Their alphabetical order is turned round, so that nothing can rest on it.
        var fresh = names.Order(StringComparer.Ordinal).Reverse().Select((id, n) => (id, n))
            .ToDictionary(p => p.id, p => $"X{p.n:000}", StringComparer.Ordinal);
        string Renamed(string words) => Name().Replace(words, m => fresh.GetValueOrDefault(m.Value, m.Value));
        AssertSame(text, Renamed(text), Renamed);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_order_of_parts_and_wiring_lines_changes_no_volts(string name)
    {
        var text = ShippedSheets.Text(name)!;
        for (var seed = 1; seed <= 3; seed++)
        {
            AssertSame(text, Shuffled(text, new Random(seed)), words => words);
        }
    }

    private static void AssertSame(string first, string second, Func<string, string> translate)
    {
        Assert.NotEqual(first, second);
        var (one, other) = (Car(first), Car(second));
        Fault[][] cars =
        [
            [],
            .. FaultCatalog.For(one).SelectMany(m => m.Faults()).Where((_, i) => i % Stride == 0).Select(f => new[] { f }),
        ];
        Assert.InRange(cars.Length, 100, 1000);
        var unsteady = 0;
        foreach (var faults in cars)
        {
            foreach (var condition in one.Network.Circuit.Conditions)
            {
                var here = one.Simulate(new Arrangement(condition.Name), faults);
                var there = other.Simulate(
                    new Arrangement(condition.Name), [.. faults.Select(f => f with { Part = translate(f.Part) })]);
                var where = $"{string.Join(' ', (object[])faults)} in {condition.Name}";
                Assert.True(here.IsSteady == there.IsSteady, where);
                Assert.Equal(here.Chatter.Select(translate).Order(), there.Chatter.Order());
                // Where it chatters there are no volts to compare, only a state it was left in.
                unsteady += here.IsSteady ? 0 : 1;
                foreach (var terminal in here.IsSteady ? one.Network.Circuit.Terminals : [])
                {
                    var volts = there.Volts(TerminalName.Parse(translate(terminal.ToString())));
                    Assert.True(Math.Abs(here.Volts(terminal) - volts) <= Same, $"{where}: {terminal} {here.Volts(terminal):R} or {volts:R}");
                }
            }
        }

        // One point in twenty at most, or too little would have been compared.
        Assert.InRange(unsteady, 0, cars.Length * one.Network.Circuit.Conditions.Length / 20);
    }

    private static CircuitSimulator Car(string text)
    {
        var reading = SheetReader.Read(text);
        Assert.True(reading.Circuit is not null, string.Join('\n', reading.Problems));
        return new CircuitSimulator(NetworkCompiler.Compile(reading.Circuit));
    }

    /// <summary>Shuffles the entries of <c>parts</c> and of <c>wiring</c>; an entry keeps its deeper lines.</summary>
    private static string Shuffled(string text, Random random)
    {
        var result = new List<string>();
        List<List<string>>? entries = null;
        foreach (var line in text.Split('\n').Append("end:"))
        {
            if (line.Length > 0 && line[0] is not (' ' or '#'))
            {
                Flush();
                entries = line is "parts:" or "wiring:" ? [] : null;
                result.Add(line);
            }
            else if (entries is null)
            {
                result.Add(line);
            }
            else if (line.StartsWith("  ", StringComparison.Ordinal) && line[2] is not (' ' or '#'))
            {
                entries.Add([line]);
            }
            else if (line.StartsWith("   ", StringComparison.Ordinal))
            {
                entries[^1].Add(line);
            }
        }

        return string.Join('\n', result.SkipLast(1));

        void Flush()
        {
            var shuffled = (entries ?? []).ToArray();
            random.Shuffle(shuffled);
            result.AddRange(shuffled.SelectMany(e => e));
        }
    }

    /// <summary>Names as sheets and faults write them; a terminal's name after its dot is none.</summary>
    [GeneratedRegex(@"(?<![\w.\-])[A-Z][A-Z0-9]*(?![\w\-])")]
    private static partial Regex Name();
}
