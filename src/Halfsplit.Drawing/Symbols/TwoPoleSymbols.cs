using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Symbols;

/// <summary>The symbols of parts with two ends, after IEC 60617, between two heights of a vertical axis.</summary>
internal static class TwoPoleSymbols
{
    public static void Draw(Pen pen, Part part, double x, double from, double to, bool isTurned)
    {
        var middle = (from + to) / 2;
        switch (part)
        {
            case Fuse:
                pen.Rect("hs-body", x - 5, from + 2, 10, to - from - 4);
                if (pen.Shown.IsBlown(part.Id))
                {
                    Ends(pen, x, from, to, 8);
                    pen.Line("hs-broken", x - 4, middle - 4, x + 4, middle + 4);
                    pen.Line("hs-broken", x - 4, middle + 4, x + 4, middle - 4);
                }
                else
                {
                    pen.Line("hs-symbol", x, from, x, to);
                }

                break;
            case Breaker:
                Blade(pen, x, from, to, pen.Shown.IsBlown(part.Id));
                pen.Rect("hs-body", x - 15, middle - 3, 6, 6);
                break;
            case Ptc:
                Resistance(pen, x, from, to);
                pen.Line("hs-symbol", x - 11, to - 4, x + 9, from + 4);
                break;
            case Sensor { Type: SensorType.Ntc }:
                Resistance(pen, x, from, to);
                pen.Polyline("hs-symbol", (x - 13, to - 3), (x - 8, to - 3), (x + 9, from + 3));
                break;
            case Resistor:
                Resistance(pen, x, from, to);
                break;
            case Heater { Sounds: false }:
                Resistance(pen, x, from, to);
                for (var y = from + 8; y < to - 4; y += 5)
                {
                    pen.Line("hs-symbol", x - 6, y, x + 6, y);
                }

                break;
            case Heater:
                Ends(pen, x, from, to, 7);
                pen.Path("hs-body", $"M{Pen.N(pen.X + x - 5)} {Pen.N(pen.Y + middle - 9)}h10v18h-10zM{Pen.N(pen.X + x - 5)} {Pen.N(pen.Y + middle - 5)}l-9 -6v22l9 -6z");
                break;
            case Diode or Led:
                Junction(pen, part, x, from, to, isTurned);
                break;
            case Lamp:
                Ends(pen, x, from, to, 4);
                pen.Circle("hs-body", x, middle, 12);
                pen.Line("hs-symbol", x - 8.5, middle - 8.5, x + 8.5, middle + 8.5);
                pen.Line("hs-symbol", x - 8.5, middle + 8.5, x + 8.5, middle - 8.5);
                break;
            case Motor:
                Ends(pen, x, from, to, 3);
                pen.Circle("hs-body", x, middle, 13);
                pen.Text("hs-letter hs-middle", x, middle + 4.5, "M");
                break;
            case Solenoid:
                Ends(pen, x, from, to, 8);
                pen.Rect("hs-body", x - 13, from + 8, 26, to - from - 16);
                pen.Line("hs-symbol", x - 7, to - 8, x + 7, from + 8);
                break;
            case Switch or Sensor:
                Blade(pen, x, from, to, !pen.Shown.IsClosed(part));
                if (part is Switch { OpensByItself: true })
                {
                    pen.Line("hs-link", x - 5, middle, x - 15, middle);
                    pen.Rect("hs-body", x - 17, middle - 4, 5, 8);
                }

                break;
            default:
                pen.Rect("hs-body", x - 9, from + 3, 18, to - from - 6);
                break;
        }
    }

    /// <summary>A contact that opens to the left: its blade hangs on the lower end.</summary>
    public static void Blade(Pen pen, double x, double from, double to, bool isOpen)
    {
        pen.Line("hs-symbol", x, from, x, from + 6);
        pen.Circle("hs-pivot", x, to - 5, 1.8);
        pen.Line("hs-symbol", x, to, x, to - 5);
        if (isOpen)
        {
            pen.Line("hs-blade", x, to - 5, x - 10, from + 4);
        }
        else
        {
            pen.Line("hs-blade", x, to - 5, x, from + 5);
        }
    }

    private static void Ends(Pen pen, double x, double from, double to, double length)
    {
        pen.Line("hs-symbol", x, from, x, from + length);
        pen.Line("hs-symbol", x, to, x, to - length);
    }

    private static void Resistance(Pen pen, double x, double from, double to)
    {
        Ends(pen, x, from, to, 3);
        pen.Rect("hs-body", x - 6, from + 3, 12, to - from - 6);
    }

    private static void Junction(Pen pen, Part part, double x, double from, double to, bool isTurned)
    {
        var middle = (from + to) / 2;
        var (tip, back) = isTurned ? (middle - 7, middle + 7) : (middle + 7, middle - 7);
        pen.Line("hs-symbol", x, from, x, to);
        pen.Path("hs-body", $"M{Pen.N(pen.X + x - 8)} {Pen.N(pen.Y + back)}h16L{Pen.N(pen.X + x)} {Pen.N(pen.Y + tip)}z");
        pen.Line("hs-symbol", x - 8, tip, x + 8, tip);
        if (part is Led)
        {
            pen.Arrow("hs-symbol", x - 7, middle - 3, x - 14, middle - 9);
            pen.Arrow("hs-symbol", x - 7, middle + 4, x - 14, middle - 2);
        }
    }
}
