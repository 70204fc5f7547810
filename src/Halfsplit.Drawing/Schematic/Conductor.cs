using Halfsplit.Circuits.Model;

namespace Halfsplit.Drawing.Schematic;

/// <summary>A wire, or two terminals that touch, or a ground point on its metal: what a line of the drawing stands for.</summary>
/// <param name="Index">Position among all conductors.</param>
/// <param name="Wire">Null where nothing but contact joins the two.</param>
internal sealed record Conductor(int Index, TerminalName From, TerminalName To, Wire? Wire);
