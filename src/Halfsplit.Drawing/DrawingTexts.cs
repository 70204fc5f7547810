using Halfsplit.Circuits;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;

namespace Halfsplit.Drawing;

/// <summary>The texts of this project.</summary>
public static class DrawingTexts
{
    public static TextSource Source { get; } = new("Halfsplit.Drawing.Texts", typeof(DrawingTexts).Assembly);

    /// <summary>The words of a drawing whose caller brings none.</summary>
    public static TextCatalog English { get; } = new(
        Language.English, Source, DiagnosisTexts.Source, CircuitTexts.Source);
}
