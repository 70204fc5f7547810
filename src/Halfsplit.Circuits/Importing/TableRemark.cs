using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Importing;

/// <summary>Which of the two tables a remark is about.</summary>
public enum TableKind { Wires, Parts }

/// <summary>Something that a table did not say, or said in a way that could not be taken.</summary>
/// <param name="Table">The table.</param>
/// <param name="Line">Line in its text, from 1; 0 where it is about the whole.</param>
/// <param name="Severity">Error: left out, or the sheet can't be used before it is mended. Warning: to be looked up, as something was assumed. Note: taken so by common practice.</param>
/// <param name="Message">What was done and what is to do.</param>
public sealed record TableRemark(TableKind Table, int Line, ProblemSeverity Severity, Message Message);

/// <summary>A sheet made from tables.</summary>
/// <param name="Sheet">Its text; null where the tables could not be read at all.</param>
/// <param name="Wires">Rows that became wires.</param>
/// <param name="Joints">Rows that became terminals touching without a wire.</param>
/// <param name="Remarks">In the order of the tables; every assumption is among them.</param>
public sealed record TableImported(string? Sheet, int Wires, int Joints, ImmutableArray<TableRemark> Remarks);
