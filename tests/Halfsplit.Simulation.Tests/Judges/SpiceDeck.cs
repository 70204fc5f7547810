using System.Globalization;
using System.Text;

namespace Halfsplit.Simulation.Tests.Judges;

/// <summary>An element of a netlist: R, V or I, from its first node to its second.</summary>
public readonly record struct SpiceElement(string Name, string From, string To, double Value)
{
    public char Kind => Name[0];
}

/// <summary>
/// A netlist as exported, read back: what is judged is the text that was written, not what it was written from.
/// Knows only what an exported netlist may hold: resistors, voltage and current sources.
/// </summary>
public sealed class SpiceDeck
{
    private SpiceDeck(SpiceElement[] elements)
    {
        Elements = elements;
        Nodes = [.. elements.SelectMany(e => new[] { e.From, e.To }).Where(n => n != "0").Distinct(StringComparer.Ordinal)];
    }

    public IReadOnlyList<SpiceElement> Elements { get; }

    /// <summary>All nodes but 0, in the order of their first mention.</summary>
    public IReadOnlyList<string> Nodes { get; }

    public static SpiceDeck Parse(string text)
    {
        var elements = new List<SpiceElement>();
        foreach (var line in text.Split('\n').Skip(1))
        {
            if (line.Length == 0 || line[0] is '*' or '.')
            {
                continue;
            }

            var words = line.Split(' ');
            if (words.Length != 4 || words[0][0] is not ('R' or 'V' or 'I'))
            {
                throw new FormatException($"An exported netlist has no line like \"{line}\".");
            }

            elements.Add(new SpiceElement(words[0], words[1], words[2], double.Parse(words[3], CultureInfo.InvariantCulture)));
        }

        return new SpiceDeck([.. elements]);
    }

    /// <summary>
    /// ngspice's volts for each deck's <see cref="Nodes"/>. Hundreds of decks go into one netlist, side by side with
    /// nothing but node 0 in common, since loading a netlist costs far more than solving it.
    /// </summary>
    public static IReadOnlyList<double[]> Judge(IReadOnlyList<SpiceDeck> decks, int together = 300)
    {
        var questions = new List<SpiceQuestion>();
        for (var first = 0; first < decks.Count; first += together)
        {
            var text = new StringBuilder("circuits side by side\n");
            var nodes = new List<string>();
            for (var i = first; i < Math.Min(decks.Count, first + together); i++)
            {
                decks[i].Write(text, i);
                nodes.AddRange(decks[i].Nodes.Select(n => Numbered(n, i)));
            }

            questions.Add(new SpiceQuestion(text.Append(".options gmin=1e-30\n").ToString(), nodes));
        }

        var answers = NgSpice.Volts(questions);
        var volts = new double[decks.Count][];
        var at = 0;
        for (var i = 0; i < decks.Count; i++)
        {
            at = i % together == 0 ? 0 : at;
            volts[i] = answers[i / together][at..(at += decks[i].Nodes.Count)];
        }

        return volts;
    }

    private void Write(StringBuilder text, int number)
    {
        foreach (var e in Elements)
        {
            text.Append(CultureInfo.InvariantCulture, $"{e.Name}q{number} {Numbered(e.From, number)} {Numbered(e.To, number)} {e.Value:R}\n");
        }
    }

    private static string Numbered(string node, int number) =>
        node == "0" ? node : string.Create(CultureInfo.InvariantCulture, $"{node}q{number}");
}
