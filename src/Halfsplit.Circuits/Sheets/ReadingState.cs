using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Sheets.Tree;

namespace Halfsplit.Circuits.Sheets;

/// <summary>What grows while one sheet is read: its problems and positions.</summary>
/// <param name="text">The sheet.</param>
internal sealed class ReadingState(string text)
{
    private readonly List<SheetProblem> _problems = [];

    /// <summary>The sheet.</summary>
    public string Text { get; } = text;

    public SheetPositions Positions { get; } = new();

    /// <summary>Errors so far, those beyond the limit of reported ones included.</summary>
    public int ErrorCount { get; private set; }

    /// <summary>Nothing more will be reported; hints need not be looked for.</summary>
    public bool IsFull => _problems.Count >= SheetLimits.Problems;

    public void Error(SheetPosition at, string code, params object[] arguments) =>
        Add(new SheetProblem(ProblemSeverity.Error, at.Line, at.Column, new Message(code, arguments)));

    public void Error(SheetNode at, string code, params object[] arguments) => Error(at.Position, code, arguments);

    public void Add(SheetProblem problem)
    {
        ErrorCount += problem.Severity == ProblemSeverity.Error ? 1 : 0;
        if (!IsFull)
        {
            _problems.Add(problem);
        }
    }

    /// <summary>In the order of the text.</summary>
    public ImmutableArray<SheetProblem> Problems() => [.. _problems.OrderBy(p => p.Line).ThenBy(p => p.Column)];

    /// <summary>
    /// The place of a character within a text of the sheet, found by walking along its source: exact for plain and
    /// folded texts, nearly so where quotes escape characters.
    /// </summary>
    public SheetPosition Within(SheetText node, int offset)
    {
        var (line, column) = (node.Position.Line, node.Position.Column);
        var wanted = 0;
        var i = node.Start;
        while (i < node.End && i < Text.Length)
        {
            var matches = wanted < node.Value.Length
                && (Text[i] == node.Value[wanted] || (char.IsWhiteSpace(node.Value[wanted]) && char.IsWhiteSpace(Text[i])));
            if (matches && wanted == offset)
            {
                break;
            }

            if (Text[i] == '\n')
            {
                (line, column) = (line + 1, 1);
            }
            else
            {
                column++;
            }

            wanted += matches ? 1 : 0;
            i++;
        }

        return new SheetPosition(line, column);
    }
}
