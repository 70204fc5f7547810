using Halfsplit.Circuits.Model;

namespace Halfsplit.Simulation.Instruments;

public sealed partial class InstrumentReader
{
    /// <summary>
    /// Which way the circuit ties two terminals together: for each branch, the share of a small current led in at one and out
    /// at the other that would flow through it, 0 to 1. On the only path it is one, in a side branch next to nothing,
    /// whether or not a current flows in the car as it is.
    /// </summary>
    /// <param name="shares">Filled; one for each of the network's branches.</param>
    public void PathShares(TerminalName from, TerminalName to, Span<double> shares)
    {
        shares.Clear();
        Array.Clear(_unit);
        Put(_point.Network.NodeOf(from), 1);
        Put(_point.Network.NodeOf(to), -1);
        SolveAdjoint();
        var branches = _point.Network.Branches;
        for (var f = 0; f < _adjoint.Length; f++)
        {
            var weight = _point.Run.Frames[f].Weight;
            for (var i = 0; i < branches.Length; i++)
            {
                var gap = At(_adjoint[f], branches[i].From) - At(_adjoint[f], branches[i].To);
                shares[i] += weight * Math.Min(1, Math.Abs(_conductance[f][i] * gap));
            }
        }
    }
}
