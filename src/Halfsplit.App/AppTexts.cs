using System.Globalization;
using Halfsplit.Bench;
using Halfsplit.Circuits;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Drawing;
using Halfsplit.Jobs;

namespace Halfsplit.App;

/// <summary>The texts of this project, and the catalogue of all projects' texts.</summary>
public static class AppTexts
{
    public static TextSource Source { get; } = new("Halfsplit.App.Texts", typeof(AppTexts).Assembly);

    /// <summary>The language that is spoken now; the page and each worker have their own.</summary>
    public static Language Language { get; set; } = Language.English;

    /// <summary>How numbers are written in it.</summary>
    public static CultureInfo Formats => Language.Formats;

    /// <summary>The answers in its words.</summary>
    public static AnswerWords Words => AnswerWords.In(Language);

    /// <summary>All texts that the app can say.</summary>
    public static TextCatalog Catalog { get; } = new(
        () => Language, Source, BenchTexts.Source, JobTexts.Source, DrawingTexts.Source, DiagnosisTexts.Source, CircuitTexts.Source);

    /// <summary>The text of a code.</summary>
    public static string Say(string code, params object[] arguments) => Catalog.Say(new Message(code, arguments));

    /// <summary>With a capital first letter.</summary>
    public static string Sentence(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length > 0 && char.IsLower(text[0]) ? char.ToUpperInvariant(text[0]) + text[1..] : text;
    }
}
