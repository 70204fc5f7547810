using System.Globalization;
using System.Resources;
using Halfsplit.Circuits;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Drawing;
using Halfsplit.Jobs;

namespace Halfsplit.Cli;

/// <summary>The texts of this project, and the catalogue of all projects' texts.</summary>
public static class CliTexts
{
    public static ResourceManager Source { get; } = new("Halfsplit.Cli.Texts", typeof(CliTexts).Assembly);

    /// <summary>All texts that the program can say.</summary>
    public static TextCatalog Catalog { get; } = new(
        CultureInfo.InvariantCulture, Source, JobTexts.Source, DrawingTexts.Source, DiagnosisTexts.Source, CircuitTexts.Source);
}
