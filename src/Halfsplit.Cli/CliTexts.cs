using System.Globalization;
using Halfsplit.Bench;
using Halfsplit.Circuits;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Drawing;
using Halfsplit.Jobs;

namespace Halfsplit.Cli;

/// <summary>The texts of this project, and the catalogue of all projects' texts.</summary>
public static class CliTexts
{
    public static TextSource Source { get; } = new("Halfsplit.Cli.Texts", typeof(CliTexts).Assembly);

    private static readonly AsyncLocal<Language?> Spoken = new();

    /// <summary>The language of the run (<see cref="Terminals.RunLanguage"/>); of this flow of execution, so that runs beside each other don't mix.</summary>
    public static Language Language
    {
        get => Spoken.Value ?? Language.English;
        set => Spoken.Value = value;
    }

    /// <summary>How numbers are written in the language of the run.</summary>
    public static CultureInfo Formats => Language.Formats;

    /// <summary>The answers in words, shown in the language of the run.</summary>
    public static AnswerWords Words => AnswerWords.In(Language);

    /// <summary>All texts that the program can say, in the language of the run.</summary>
    public static TextCatalog Catalog { get; } = new(() => Language, Source, BenchTexts.Source, JobTexts.Source, DrawingTexts.Source, DiagnosisTexts.Source, CircuitTexts.Source);
}
