using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Symbols;

/// <summary>A switch of several contacts: a blade for each, linked, with the positions written beside it.</summary>
internal sealed class SwitchBox : PartBox
{
    private const double Pitch = 80, MiddleHeight = 44;

    private readonly Switch _switch;
    private readonly List<(Port From, List<Port> To)> _groups = [];

    public SwitchBox(Switch change, Potentials potentials)
        : base(change)
    {
        _switch = change;
        double Of(string terminal) => potentials.Of(new(change.Id, terminal));
        var contacts = Contacts(change);
        var isTurned = contacts.Average(c => Of(c.From)) < contacts.Average(c => Of(c.To)) - 1e-4;
        foreach (var group in contacts.GroupBy(c => c.From))
        {
            var from = new Port(this, isTurned ? Side.Bottom : Side.Top, group.Key);
            var to = group.Select(c => new Port(this, isTurned ? Side.Top : Side.Bottom, c.To)).ToList();
            _groups.Add((from, to));
            (isTurned ? Bottom : Top).Add(from);
            (isTurned ? Top : Bottom).AddRange(to);
        }

        // A terminal that no position uses still has to be there.
        foreach (var unused in change.Terminals.Where(t => Ports.All(p => p.Terminal != t)).ToList())
        {
            Bottom.Add(new Port(this, Side.Bottom, unused));
        }
    }

    public override bool CanMirror => true;

    protected override double WidthOfNames => 96;

    protected override IEnumerable<FormattableString> Values => base.Values.Concat(_switch.Positions
        .OrderBy(p => p.Value.Length).ThenBy(p => p.Key, StringComparer.Ordinal)
        .Select(p => p.Value.Length == 0 ? (FormattableString)$"{p.Key}: –" : $"{p.Key}: {string.Join(", ", p.Value.Select(c => $"{c.From}-{c.To}"))}"));

    /// <summary>True if every contact's far end belongs to one near end, so that no blades cross.</summary>
    public static bool CanDraw(Switch change)
    {
        var contacts = Contacts(change);
        return change.Terminals.Length > 2 && contacts.Count > 0
            && contacts.GroupBy(c => c.To).All(g => g.Count() == 1)
            && !contacts.Select(c => c.From).Intersect(contacts.Select(c => c.To)).Any();
    }

    private static List<SwitchContact> Contacts(Switch change) =>
        [.. change.Positions.Values.SelectMany(c => c).Distinct().OrderBy(c => change.Terminals.IndexOf(c.From)).ThenBy(c => change.Terminals.IndexOf(c.To))];

    public override void Arrange()
    {
        var (width, height) = ArrangeTexts();
        var far = _groups.SelectMany(g => g.To).Concat(Ports.Except(_groups.SelectMany(g => g.To.Prepend(g.From)))).ToList();
        for (var i = 0; i < far.Count; i++)
        {
            var place = IsMirrored ? far.Count - 1 - i : i;
            far[i].Offset = 30 + (Pitch * place);
        }

        foreach (var (from, to) in _groups)
        {
            from.Offset = Math.Round(to.Average(p => p.Offset));
        }

        var right = Ports.Max(p => p.Offset);
        SetBeside(right + 24, height, MiddleHeight);
        Width = Math.Ceiling(Math.Max(TextX + width, right + MarkRoom + VoltsRoom));
    }

    public override void Draw(Pen pen)
    {
        var middle = Height / 2;
        var (top, bottom) = (middle - 20, middle + 20);
        var all = _groups.SelectMany(g => g.To).Select(p => p.Offset).ToList();
        pen.Rect("hs-outline", all.Min() - 19, top - 2, all.Max() - all.Min() + 36, bottom - top + 4);
        if (all.Count > 1)
        {
            pen.Line("hs-link", all.Min() - 4, middle + 3, all.Max() - 4, middle + 3);
        }

        foreach (var (from, to) in _groups)
        {
            var isTurned = from.Side == Side.Bottom;
            double At(double y) => isTurned ? top + bottom - y : y;
            var nearEdge = isTurned ? Height : 0;
            var bar = At(top + 5);
            pen.Wire(pen.Shown.FlowAt(from), from.Offset, nearEdge, from.Offset, bar);
            if (to.Count > 1)
            {
                pen.Line("hs-symbol", to.Min(p => p.Offset), bar, to.Max(p => p.Offset), bar);
            }

            foreach (var port in to)
            {
                var x = port.Offset;
                pen.Line("hs-symbol", x, bar, x, At(top + 10));
                pen.Wire(pen.Shown.FlowAt(port), x, At(bottom - 7), x, Height - nearEdge);
                pen.Circle("hs-pivot", x, At(bottom - 7), 1.8);
                var isClosed = pen.Shown.IsClosed(_switch, from.Terminal!, port.Terminal!);
                pen.Line("hs-blade", x, At(bottom - 7), isClosed ? x : x - 9, At(isClosed ? top + 9 : top + 11));
            }
        }

        foreach (var port in Ports)
        {
            DrawTerminal(pen, port);
        }

        DrawTexts(pen);
    }
}
