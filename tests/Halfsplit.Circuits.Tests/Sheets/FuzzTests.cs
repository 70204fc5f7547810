using System.Text;
using CsCheck;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Sheets;

/// <summary>Whatever a text says, reading it ends in a value: a circuit or errors that stand somewhere in the text.</summary>
public sealed class FuzzTests
{
    private static readonly string[] Seeds = [.. ShippedSheets.Names.Select(n => ShippedSheets.Text(n)!), MarkedSheet.Right];

    private static readonly string[] Pieces =
    [
        "{", "}", "[", "]", ":", ": ", "-", "- ", "->", " -> ", "\n", "\n  ", " ", "\t", "\"", "'", "#", " #", "&a", "*a", "!t", "|", ">", "%",
        "?", "? ", ",", "\\", "\r", "\0", "\ufeff", "\ud800", "é", "Ω", "---\n", "...\n", "wire", "BAT", "BAT.pos", "0", "-1", "1e999", "NaN",
        "off", "on", "yes", "~", "null", "kind: ", "kind: relay", "K1", ".", "..", "a", "b", "1mm2", "AWG", "/0", "in", "as", "x: 1\n",
    ];

    private static readonly Gen<(int Kind, double Where, double Other, int Piece)> Edit =
        Gen.Select(Gen.Int[0, 4], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Int[0, 1000]);

    [Fact]
    public void Mutated_sheets_never_throw() =>
        Gen.Select(Gen.Int[0, Seeds.Length - 1], Edit.Array[1, 8]).Sample(
            (seed, edits) => Check(edits.Aggregate(Seeds[seed], (text, e) => Mutate(text, e.Kind, e.Where, e.Other, e.Piece))),
            iter: 3000);

    [Fact]
    public void Texts_of_random_pieces_never_throw() =>
        Gen.Int[0, Pieces.Length - 1].Array[0, 60].Sample(
            indices => Check(string.Concat(indices.Select(i => Pieces[i]))), iter: 20_000);

    [Fact]
    public void Random_bytes_never_throw() =>
        Gen.Byte.Array[0, 400].Sample(bytes =>
        {
            Check(Encoding.UTF8.GetString(bytes));
            Check(Encoding.Latin1.GetString(bytes));
        });

    [Fact]
    public void Random_values_of_keys_never_throw() =>
        Gen.Select(Gen.Int[0, Pieces.Length - 1].Array[0, 5], Gen.Int[0, 40]).Sample((indices, key) =>
        {
            var value = string.Concat(indices.Select(i => Pieces[i]));
            var lines = Seeds[^1].Split('\n');
            var line = key % lines.Length;
            var colon = lines[line].IndexOf(": ", StringComparison.Ordinal);
            lines[line] = colon < 0 ? value : lines[line][..(colon + 2)] + value;
            Check(string.Join('\n', lines));
        });

    private static void Check(string text)
    {
        var reading = SheetReader.Read(text);
        var errors = reading.Problems.Count(p => p.Severity == ProblemSeverity.Error);
        Assert.Equal(errors > 0, reading.Circuit is null);
        Assert.All(reading.Problems, p => Assert.True(p.Line >= 1 && p.Column >= 1, $"{p} in {text}"));
        if (reading.Circuit is { } circuit)
        {
            CircuitLint.Check(circuit, reading.Positions);
            var again = SheetReader.Read(SheetWriter.Write(circuit));
            Assert.Empty(again.Problems);
            Assert.Equal(CircuitDump.Of(circuit), CircuitDump.Of(again.Circuit!));
        }
    }

    private static string Mutate(string text, int kind, double where, double other, int piece)
    {
        var at = (int)(where * text.Length);
        var length = Math.Min((int)(other * other * 40), text.Length - at);
        return kind switch
        {
            0 => text.Remove(at, length),
            1 => text.Insert(at, Pieces[piece % Pieces.Length]),
            2 => text.Remove(at, length).Insert(at, Pieces[piece % Pieces.Length]),
            3 => text.Insert((int)(other * text.Length), text.Substring(at, Math.Min(30, text.Length - at))),
            _ => SwapLines(text, where, other),
        };
    }

    private static string SwapLines(string text, double a, double b)
    {
        var lines = text.Split('\n');
        var (i, j) = ((int)(a * (lines.Length - 1)), (int)(b * (lines.Length - 1)));
        (lines[i], lines[j]) = (lines[j], lines[i]);
        return string.Join('\n', lines);
    }
}
