using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Symbols;

/// <summary>A relay: its coil, its contacts, and the dashed link between them, in one outline.</summary>
internal sealed class RelayBox : PartBox
{
    private const double CoilRoom = 76, ContactRoom = 76, MiddleHeight = 40;

    private readonly Relay _relay;
    private readonly Port _coilTop, _coilBottom, _common;
    private readonly List<Port> _contacts = [];

    public RelayBox(Relay relay, Potentials potentials)
        : base(relay)
    {
        _relay = relay;
        double Of(string terminal) => potentials.Of(new(relay.Id, terminal));
        var isCoilTurned = potentials.IsBelow(new(relay.Id, "86"), new(relay.Id, "85"));
        _coilTop = new Port(this, Side.Top, isCoilTurned ? "85" : "86");
        _coilBottom = new Port(this, Side.Bottom, isCoilTurned ? "86" : "85");
        var contacts = relay.Terminals.Where(t => t.StartsWith("87", StringComparison.Ordinal)).ToList();
        var isContactTurned = Of("30") < contacts.Average(Of) - 1e-4;
        var (commonSide, contactSide) = isContactTurned ? (Side.Bottom, Side.Top) : (Side.Top, Side.Bottom);
        _common = new Port(this, commonSide, "30");
        _contacts.AddRange(contacts.Select(c => new Port(this, contactSide, c)));
        Top.Add(_coilTop);
        Bottom.Add(_coilBottom);
        (isContactTurned ? Bottom : Top).Add(_common);
        (isContactTurned ? Top : Bottom).AddRange(_contacts);
    }

    public override bool CanMirror => true;

    private double CoilX => _coilTop.Offset;

    public override void Arrange()
    {
        var (width, height) = ArrangeTexts();
        var left = NumberRoom("86");
        var contactsWide = ContactRoom * (_contacts.Count - 1);
        if (IsMirrored)
        {
            for (var i = 0; i < _contacts.Count; i++)
            {
                _contacts[i].Offset = left + (ContactRoom * (_contacts.Count - 1 - i)) + (_contacts.Count > 1 ? 8 : 0);
            }

            _common.Offset = _contacts[0].Offset;
            _coilTop.Offset = _coilBottom.Offset = left + contactsWide + CoilRoom;
        }
        else
        {
            _coilTop.Offset = _coilBottom.Offset = left;
            for (var i = 0; i < _contacts.Count; i++)
            {
                _contacts[i].Offset = left + CoilRoom + (ContactRoom * i);
            }

            _common.Offset = _contacts[0].Offset;
        }

        var right = Ports.Max(p => p.Offset);
        SetBeside(right + 20, height, MiddleHeight);
        Width = Math.Ceiling(Math.Max(TextX + width, right + MarkRoom + VoltsRoom));
    }

    public override void Draw(Pen pen)
    {
        var middle = Height / 2;
        var (from, to) = (middle - 17, middle + 17);
        var contactX = _common.Offset;
        var others = _contacts.Select(c => c.Offset).ToList();
        pen.Rect("hs-outline", Math.Min(CoilX, others.Min()) - 17, from - 3, Math.Abs(CoilX - contactX) + (ContactRoom * (_contacts.Count - 1)) + 34, to - from + 6);
        var isIn = pen.Shown.IsPulledIn(Part.Id);
        var coilFlow = pen.Shown.FlowAt(_coilTop);
        pen.Wire(coilFlow, CoilX, 0, CoilX, middle - 8);
        pen.Wire(coilFlow, CoilX, middle + 8, CoilX, Height);
        pen.Rect(isIn ? "hs-body hs-live" : "hs-body", CoilX - 13, middle - 8, 26, 16);
        DrawSuppression(pen, middle);
        DrawContacts(pen, from, to, isIn);
        foreach (var port in Ports)
        {
            DrawTerminal(pen, port);
        }

        DrawTexts(pen);
    }

    private void DrawContacts(Pen pen, double from, double to, bool isIn)
    {
        var x = _common.Offset;
        var isTurned = _common.Side == Side.Bottom;
        double At(double y) => isTurned ? from + to - y : y;
        double Edge(Side side) => side == Side.Top ? 0 : Height;
        pen.Wire(pen.Shown.FlowAt(_common), x, Edge(_common.Side), x, At(from));
        pen.Line("hs-symbol", x, At(from), x, At(from + 6));
        pen.Circle("hs-pivot", x, At(from + 6), 1.8);
        var isClosed = false;
        foreach (var contact in _contacts)
        {
            var makes = contact.Terminal != "87a";
            var tip = At(to - 7);
            pen.Wire(pen.Shown.FlowAt(contact), contact.Offset, Edge(contact.Side), contact.Offset, At(to));
            pen.Line("hs-symbol", contact.Offset, At(to), contact.Offset, tip);
            if (contact.Offset != x)
            {
                // The second contact reaches over to the blade's side.
                pen.Line("hs-symbol", contact.Offset, tip, x + (Math.Sign(contact.Offset - x) * 10), tip);
            }

            if (makes == isIn && !isClosed)
            {
                var reach = contact.Offset == x ? x : x + (Math.Sign(contact.Offset - x) * 9);
                pen.Line("hs-blade", x, At(from + 6), reach, tip);
                isClosed = true;
            }
            else if (makes == isIn)
            {
                pen.Line("hs-blade", x, At(from + 6), x + (Math.Sign(contact.Offset - x) * 10), tip);
            }
        }

        if (!isClosed)
        {
            pen.Line("hs-blade", x, At(from + 6), x + (Math.Sign(CoilX - x) * 9), At(to - 8));
        }

        var grip = isClosed && _contacts.Count == 1 ? x : x + (Math.Sign(CoilX - x) * 4);
        pen.Line("hs-link", CoilX + (Math.Sign(x - CoilX) * 13), (from + to) / 2, grip, (from + to) / 2);
    }

    /// <summary>What catches the coil's kick, across it.</summary>
    private void DrawSuppression(Pen pen, double middle)
    {
        if (_relay.Suppression == Suppression.None)
        {
            return;
        }

        var away = CoilX < _common.Offset ? 1 : -1;
        var x = CoilX + (19 * away);
        pen.Polyline("hs-thin", (CoilX, middle - 14), (x, middle - 14), (x, middle + 14), (CoilX, middle + 14));
        if (_relay.Suppression == Suppression.Resistor)
        {
            pen.Rect("hs-body hs-thin", x - 2.5, middle - 11, 5, 8);
        }
        else
        {
            // Its cathode is towards 86.
            var up = _coilTop.Terminal == "86" ? 1 : -1;
            var tip = middle - 7 - (4 * up);
            pen.Path("hs-body hs-thin", $"M{Pen.N(pen.X + x - 4)} {Pen.N(pen.Y + tip + (8 * up))}h8L{Pen.N(pen.X + x)} {Pen.N(pen.Y + tip)}z");
            pen.Line("hs-thin", x - 4, tip, x + 4, tip);
        }
    }
}
