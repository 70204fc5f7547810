using Halfsplit.Circuits;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Drawing;
using Halfsplit.Jobs;

namespace Halfsplit.Cli;

/// <summary>The texts of this project, and the catalogue of all projects' texts.</summary>
public static class CliTexts
{
    public static TextSource Source { get; } = new("Halfsplit.Cli.Texts", typeof(CliTexts).Assembly);

    /// <summary>All texts that the program can say, in the language of the run (<see cref="Terminals.RunLanguage"/>).</summary>
    public static TextCatalog Catalog { get; } = new(Source, JobTexts.Source, DrawingTexts.Source, DiagnosisTexts.Source, CircuitTexts.Source);
}
