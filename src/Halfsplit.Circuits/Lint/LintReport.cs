using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Lint;

/// <summary>Collects what the rules find, with the positions of what they name.</summary>
internal sealed class LintReport(SheetPositions positions)
{
    private readonly List<SheetProblem> _problems = [];

    public IReadOnlyList<SheetProblem> Problems => _problems;

    /// <summary>Nothing more will be reported; hints need not be looked for.</summary>
    public bool IsFull => _problems.Count >= SheetLimits.Problems;

    public void AtKey(ProblemSeverity severity, string[] path, string code, params object[] arguments) =>
        Add(severity, positions.OfKey(path), code, arguments);

    public void AtValue(ProblemSeverity severity, string[] path, string code, params object[] arguments) =>
        Add(severity, positions.OfValue(path), code, arguments);

    private void Add(ProblemSeverity severity, SheetPosition at, string code, object[] arguments) =>
        _problems.Add(new SheetProblem(severity, at.Line, at.Column, new Message(code, arguments)));
}
