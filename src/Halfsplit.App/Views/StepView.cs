namespace Halfsplit.App.Views;

/// <summary>What to do now.</summary>
/// <param name="Kind"><c>check</c>, <c>repair</c>, <c>proof</c>, <c>put-back</c>, <c>stuck</c> (nothing left to do here) or <c>done</c>.</param>
/// <param name="Check">The check's id; null where there is none.</param>
/// <param name="What">What is done, without the set-up.</param>
/// <param name="SetUp">The condition, and what is unplugged, pulled and bridged.</param>
/// <param name="Steps">The change from the present arrangement, a line each.</param>
/// <param name="Spoken">The step as one text to be read aloud.</param>
public sealed record StepView(
    string Kind, string? Check, int Number, string Title, string What, string SetUp, double Minutes, string Reason,
    string[] Places, CautionView[] Cautions, string[] Steps, LeadsView? Leads, ScaleView? Scale, AnswerBandView[] Words,
    AnswerPadView Pad, FindingView? Finding, MoneyView? Money, OutsideView? Outside, PutBackView? PutBack, bool IsChosen,
    string Spoken)
{
    /// <summary>Where the part is that is looked at or pulled, where no lead shows it already; null where nothing is to be said of it.</summary>
    public LeadView? Seat { get; init; }

    /// <summary>Why this one; null where it is worked out when asked for.</summary>
    public WhyView? Why { get; init; }

    /// <summary>What else could be measured, best first; null where it is worked out when asked for.</summary>
    public RankedView[]? Others { get; init; }
}

/// <summary>A caution: a word for the strip, and its whole text.</summary>
/// <param name="Id">The same for the same caution, so that it is asked to be read only once in a job.</param>
public sealed record CautionView(string Id, string Short, string Text);

/// <summary>Where the leads go and how the instrument is set.</summary>
/// <param name="IsLamp">Both ends are alike: no red, no black.</param>
public sealed record LeadsView(LeadView? Red, LeadView? Black, string Setting, bool IsLamp);

/// <summary>One lead.</summary>
/// <param name="Terminal">The terminal's name.</param>
/// <param name="Where">The terminal in words.</param>
/// <param name="Picture">Its connector face, socket or slot as SVG; empty where there is none.</param>
public sealed record LeadView(string Terminal, string Where, string Picture);

/// <summary>What can be answered.</summary>
/// <param name="Units">For numbers: the units to choose from, the usual one first; empty where words answer.</param>
/// <param name="OverLimit">The display may show over-limit.</param>
/// <param name="Words">What can be answered in words.</param>
/// <param name="MaySkip">It can be left out.</param>
public sealed record AnswerPadView(string[] Units, bool OverLimit, WordView[] Words, bool MaySkip);

/// <summary>An answer in words.</summary>
/// <param name="Text">As it is shown, in the person's language.</param>
public sealed record WordView(string Id, string Text)
{
    /// <summary>As it is understood in every language.</summary>
    public string Typed => Id.Replace('-', ' ');
}

/// <summary>The readings to expect, on a ruled axis.</summary>
/// <param name="Ticks">Left to right; positions are 0 to 1.</param>
public sealed record ScaleView(string Unit, ScaleTick[] Ticks, ScaleBand[] Bands);

public sealed record ScaleTick(double At, string Label);

/// <summary>Suspects that would show nearly the same number.</summary>
/// <param name="Letter">Names the band in picture and list.</param>
/// <param name="From">0 to 1 on the axis.</param>
/// <param name="To">0 to 1 on the axis.</param>
/// <param name="IsHealthy">A healthy car would show this too.</param>
public sealed record ScaleBand(
    string Letter, double From, double To, string Range, double Odds, string OddsText, string Names, bool IsHealthy);

/// <summary>Suspects that would answer with the same word.</summary>
public sealed record AnswerBandView(string Word, double Odds, string OddsText, string Names, bool IsHealthy);
