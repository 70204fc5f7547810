using System.Globalization;
using System.Text;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Sheets;

/// <summary>
/// A wire as a path writes it: <c>wire 2.5mm2 4.2m YE/BK as NAME in PLACE</c>, <c>wire 14AWG 6ft RD</c>; with <c>about</c>
/// before a gauge or a length that is a guess.
/// </summary>
internal static class WireText
{
    /// <summary>The word before a guess.</summary>
    public const string About = "about";

    private const string Awg = "AWG";

    /// <summary>The thinnest AWG number taken; the lint judges what is sensible.</summary>
    private const int ThinnestAwg = 40;

    /// <summary>True if an item of a path is a wire.</summary>
    public static bool IsWire(string item) =>
        item == "wire" || (item.StartsWith("wire", StringComparison.Ordinal) && item.Length > 4 && char.IsWhiteSpace(item[4]));

    /// <summary>The wire, or what is wrong.</summary>
    public static bool TryParse(string item, out PathWire? wire, out Message? problem)
    {
        wire = null;
        problem = null;
        WireGauge? gauge = null;
        string? colour = null, name = null, place = null, written = null;
        double? length = null;
        bool about = false, gaugeGuessed = false, lengthGuessed = false;
        var words = Words(item[4..]);
        for (var i = 0; i < words.Count && problem is null; i++)
        {
            var word = words[i];
            if (about && Quantity.NumberLength(word) == 0)
            {
                problem = new Message("sheet.about-what", word);
                break;
            }

            if (word == About)
            {
                about = true;
                continue;
            }

            if (word == "in" && i + 1 < words.Count)
            {
                place = string.Join(' ', words.Skip(i + 1));
                break;
            }

            if (word == "as" && i + 1 < words.Count)
            {
                name = words[++i];
                problem = SheetNames.IsTerminal(name) ? null : new Message("sheet.bad-wire-name", name);
            }
            else if (word.EndsWith(Awg, StringComparison.OrdinalIgnoreCase))
            {
                problem = Once(gauge, word) ?? AwgGauge(word, out gauge);
                gaugeGuessed = about;
            }
            else if (Quantity.NumberLength(word) == 0)
            {
                problem = Once(colour, word)
                    ?? (IsColour(word) ? null : new Message("sheet.bad-wire-word", word));
                colour = word.ToUpperInvariant();
            }
            else if (Unit.SquareMillimetre.TryFind(word[Quantity.NumberLength(word)..], out _))
            {
                problem = Once(gauge, word);
                if (problem is null
                    && Quantity.TryParse(word, Unit.SquareMillimetre, Limits.SquareMillimetres, out var area, out problem))
                {
                    gauge = new WireGauge(area);
                    gaugeGuessed = about;
                }
            }
            else
            {
                problem = Once(length, word);
                if (problem is null && Quantity.TryParse(word, Unit.Metre, Limits.Metres, out var metres, out problem))
                {
                    length = metres;
                    written = word.Replace(',', '.');
                    lengthGuessed = about;
                }
            }

            about = false;
        }

        problem ??= about ? new Message("sheet.about-what", About) : null;
        problem ??= gauge is null ? new Message("sheet.wire-gauge") : length is null ? new Message("sheet.wire-length") : null;
        if (problem is not null)
        {
            return false;
        }

        wire = new PathWire(gauge!, length!.Value, written!, colour, name, place, gaugeGuessed, lengthGuessed);
        return true;
    }

    /// <summary>The wire as it is read back.</summary>
    public static string Write(PathWire wire)
    {
        var text = new StringBuilder("wire ");
        text.Append(Gauge(wire)).Append(' ').Append(Length(wire));
        text.Append(wire.Colour is null ? "" : " " + wire.Colour);
        text.Append(wire.Name is null ? "" : " as " + wire.Name);
        text.Append(wire.Place is null ? "" : " in " + wire.Place);
        return text.ToString();
    }

    /// <summary>The gauge as it is read back, with the word before a guess.</summary>
    public static string Gauge(PathWire wire) => Said(
        wire.Gauge.AwgText is { } awg ? awg + Awg : wire.Gauge.SquareMillimetres.ToString("R", CultureInfo.InvariantCulture) + "mm2", wire.GaugeGuessed);

    /// <summary>The length as it is read back, with the word before a guess.</summary>
    public static string Length(PathWire wire) => Said(wire.LengthWritten, wire.LengthGuessed);

    /// <summary>A gauge or a length, with the word before a guess.</summary>
    public static string Said(string value, bool guessed) => guessed ? $"{About} {value}" : value;

    /// <summary>The words of the item, with a number and the unit behind it put together.</summary>
    private static List<string> Words(string text)
    {
        var words = new List<string>();
        foreach (var word in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            var isUnit = word != "in"
                && (Unit.Metre.TryFind(word, out _) || Unit.SquareMillimetre.TryFind(word, out _)
                    || string.Equals(word, Awg, StringComparison.OrdinalIgnoreCase));
            if (isUnit && words.Count > 0 && IsNumber(words[^1]))
            {
                words[^1] += word;
            }
            else
            {
                words.Add(word);
            }
        }

        return words;
    }

    /// <summary>A number, or the "4/0" of a thick AWG size.</summary>
    private static bool IsNumber(string word) =>
        Quantity.NumberLength(word) == (word.EndsWith("/0", StringComparison.Ordinal) ? word.Length - 2 : word.Length);

    private static Message? Once<T>(T? already, string word) =>
        already is null ? null : new Message("sheet.wire-twice", word);

    private static Message? AwgGauge(string word, out WireGauge? gauge)
    {
        var number = word[..^Awg.Length];
        var zeros = number.EndsWith("/0", StringComparison.Ordinal);
        gauge = null;
        if (!int.TryParse(zeros ? number[..^2] : number, NumberStyles.None, CultureInfo.InvariantCulture, out var awg))
        {
            return new Message("sheet.bad-awg", word);
        }

        awg = zeros ? 1 - awg : awg;
        if (awg is < -3 or > ThinnestAwg)
        {
            return new Message("sheet.bad-awg", word);
        }

        gauge = WireGauge.OfAwg(awg);
        return null;
    }

    private static bool IsColour(string word) =>
        word.Split('/').All(code => code.Length >= 2 && code.All(char.IsAsciiLetter));
}
