namespace Halfsplit.App.Views;

/// <summary>A circuit's parts and terminals, for the drawing and for choosing two points.</summary>
/// <param name="Drawing">The whole drawing as SVG; empty where it is drawn elsewhere.</param>
public sealed record CircuitView(string Drawing, PartView[] Parts, string[] Conditions, string Condition, InstrumentView[] Instruments);

/// <summary>A part and the terminals that a lead can touch.</summary>
public sealed record PartView(string Id, string Name, string Kind, string Place, double Odds, string OddsText, string[] Terminals, bool MayProbe);

/// <summary>A setting of the meter.</summary>
public sealed record InstrumentView(string Id, string Name);

/// <summary>A part as it stands in a condition.</summary>
/// <param name="Volts">A terminal and its volts a line, in the likeliest car.</param>
public sealed record PartStateView(
    string Id, string Name, string Place, string Slot, string State, string[] Volts, SuspectView[] Suspects, string[] Cautions);

/// <summary>What would be read between two points.</summary>
/// <param name="Healthy">In a healthy car.</param>
/// <param name="Refusal">Why nobody should measure there; null where one may.</param>
public sealed record BetweenView(
    string Title, string Healthy, ScaleView? Scale, AnswerBandView[] Words, string? Refusal, CautionView[] Cautions);

/// <summary>What can be said and chosen when a job is opened.</summary>
public sealed record OpeningView(
    string Sheet, string Title, string Summary, string Complaint, string Means, string[] Cautions, NoticeView[] Noticeable,
    string[] Tools, PlaceView[] Places);

/// <summary>A place and what it takes to get there.</summary>
public sealed record PlaceView(string Name, double Minutes, string[] Tools);

/// <summary>Something that can be noticed.</summary>
/// <param name="About">What it can be about; empty where it names nothing.</param>
/// <param name="Usual">What it is about when nothing is named.</param>
public sealed record NoticeView(string Name, string Text, string[] About, string? Usual, bool MustName);
