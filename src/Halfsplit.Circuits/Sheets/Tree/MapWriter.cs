using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Sheets.Tree;

/// <summary>Fills a map that will be written; what equals its default is left out.</summary>
internal sealed class MapWriter
{
    public SheetMap Map { get; } = new(default, []);

    public static SheetText TextNode(string text) => new(default, text, 0, 0);

    public static SheetList ListNode(IEnumerable<string> texts) => new(default, [.. texts.Select(TextNode)]);

    public void Add(string key, SheetNode value) => Map.Entries.Add(new SheetEntry(TextNode(key), value));

    public void Text(string key, string? text, string? unless = null)
    {
        if (text is not null && text != unless)
        {
            Add(key, TextNode(text));
        }
    }

    public void Texts(string key, IReadOnlyCollection<string> texts)
    {
        if (texts.Count > 0)
        {
            Add(key, ListNode(texts));
        }
    }

    public void YesNo(string key, bool value, bool unless = false)
    {
        if (value != unless)
        {
            Add(key, TextNode(value ? "yes" : "no"));
        }
    }

    public void Quantity(string key, double? value, Unit unit, double? unless = null)
    {
        if (value is { } number && number != unless)
        {
            Add(key, TextNode(Quantities.Quantity.Write(number, unit)));
        }
    }

    public void Range(string key, ValueRange? range, Unit unit)
    {
        if (range is { } r)
        {
            var low = Quantities.Quantity.Write(r.Low, unit);
            Add(key, TextNode(r.Low == r.High ? low : $"{low} to {Quantities.Quantity.Write(r.High, unit)}"));
        }
    }
}
