using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Lookups;

/// <summary>Wire colours of IEC 60757 by code and by the words that tables of wires may have too (<see cref="WireColours.Named"/>).</summary>
public static class ColourTable
{
    /// <summary>Reads a code (<c>BK</c>, <c>RDBU</c>, <c>rd/bu</c>) or a name (<c>black</c>, <c>schwarz</c>, <c>rot/weiß</c>).</summary>
    public static Outcome<Answer> Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var asked = text.Trim();
        return WireColours.Named(asked) is { } code ? Outcome.Of(Answer(asked, [code], false))
            : Parts(asked) is { Length: > 0 } parts ? Outcome.Of(Answer(asked, parts, asked.Contains('/', StringComparison.Ordinal)))
            : Outcome.Wrong<Answer>(new Message("bench-limit.colour", asked, string.Join(", ", WireColours.Codes)));
    }

    /// <summary>The name of a code in words.</summary>
    public static Message Name(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        return new Message($"bench-colour.{code.ToLowerInvariant()}");
    }

    private static Answer Answer(string asked, ImmutableArray<string> codes, bool isTracer)
    {
        codes = isTracer ? codes : [.. codes.OrderBy(c => WireColours.Codes.IndexOf(c))];
        var written = string.Join(isTracer ? "/" : "", codes);
        return new Answer(
            new Message("bench-colour.title", asked), [],
            [
                new("code", new Message("bench-colour.plain", written)),
                new("colour", codes.Select(Name).Aggregate((left, right) => new Message(isTracer ? "bench-colour.with-tracer" : "bench-colour.and", left, right))),
            ],
            [], [new Message(isTracer ? "bench-colour.tracer" : "bench-colour.source")]);
    }

    /// <summary>The codes that a text is made of, by codes and names; empty where it is not made of colours.</summary>
    private static ImmutableArray<string> Parts(string text)
    {
        var parts = ImmutableArray.CreateBuilder<string>();
        foreach (var piece in text.Split('/', StringSplitOptions.TrimEntries))
        {
            for (var rest = WireColours.Named(piece) ?? piece.ToUpperInvariant(); rest.Length > 0;)
            {
                var code = rest.StartsWith(WireColours.GreenYellow, StringComparison.Ordinal) ? WireColours.GreenYellow : WireColours.Codes.FirstOrDefault(c => rest.StartsWith(c, StringComparison.Ordinal));
                if (code is null)
                {
                    return [];
                }

                parts.Add(code);
                rest = rest[code.Length..];
            }
        }

        return parts.ToImmutable();
    }
}
