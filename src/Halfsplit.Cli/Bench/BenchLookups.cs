using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Lookups;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Bench;

/// <summary>What people look up: terminals, colours, fuses, gauges.</summary>
public static class BenchLookups
{
    public static int Terminal(Terminal terminal, LookupSettings settings) => Show(terminal, settings, TerminalTable.Of);

    public static int Colour(Terminal terminal, LookupSettings settings) => Show(terminal, settings, ColourTable.Of);

    public static int Rating(Terminal terminal, LookupSettings settings) => Show(terminal, settings, FuseRatings.Of);

    public static int Gauge(Terminal terminal, LookupSettings settings) => Show(terminal, settings, GaugeTable.Of);

    private static int Show(Terminal terminal, LookupSettings settings, Func<string, Outcome<Answer>> find)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, find(string.Join(' ', settings.Name)));
    }
}
