using System.Resources;

namespace Halfsplit.Jobs;

/// <summary>The texts of this project.</summary>
public static class JobTexts
{
    public static ResourceManager Source { get; } = new("Halfsplit.Jobs.Texts", typeof(JobTexts).Assembly);
}
