using Halfsplit.Circuits.Messages;

namespace Halfsplit.Diagnosis;

/// <summary>The texts of this project.</summary>
public static class DiagnosisTexts
{
    public static TextSource Source { get; } = new("Halfsplit.Diagnosis.Texts", typeof(DiagnosisTexts).Assembly);
}
