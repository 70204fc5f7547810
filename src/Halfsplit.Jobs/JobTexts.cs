using Halfsplit.Circuits.Messages;

namespace Halfsplit.Jobs;

/// <summary>The texts of this project.</summary>
public static class JobTexts
{
    public static TextSource Source { get; } = new("Halfsplit.Jobs.Texts", typeof(JobTexts).Assembly);
}
