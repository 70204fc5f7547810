using Halfsplit.Circuits.Messages;

namespace Halfsplit.Circuits.Sheets;

/// <summary>How bad a problem is: an error forbids use, a warning asks for a second look, a note only tells.</summary>
public enum ProblemSeverity { Note, Warning, Error }

/// <summary>Something wrong in a sheet.</summary>
/// <param name="Line">Line in the sheet, from 1; 0 if it has no place there (a circuit built by code).</param>
/// <param name="Column">Column in the line, from 1; 0 likewise.</param>
/// <param name="Message">What is wrong and how to mend it.</param>
public sealed record SheetProblem(ProblemSeverity Severity, int Line, int Column, Message Message);
