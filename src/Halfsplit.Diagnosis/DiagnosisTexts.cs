using System.Resources;

namespace Halfsplit.Diagnosis;

/// <summary>The texts of this project.</summary>
public static class DiagnosisTexts
{
    public static ResourceManager Source { get; } = new("Halfsplit.Diagnosis.Texts", typeof(DiagnosisTexts).Assembly);
}
