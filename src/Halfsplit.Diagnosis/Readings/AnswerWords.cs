using System.Collections.Frozen;
using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>
/// What people type for each <see cref="AnswerWord"/>, from the resource <c>AnswerWords</c>: a line per word, its
/// texts parted by semicolons, the first being the one shown. A text may stand at several words ("nothing" is silent,
/// dark or no beep); the check then decides. The words of every language are understood, whichever is shown.
/// </summary>
public sealed class AnswerWords
{
    private const string OverLimitKey = "over-limit";
    private const string NothingShownKey = "nothing-shown";

    private static readonly TextSource Resources =
        new("Halfsplit.Diagnosis.Readings.AnswerWords", typeof(AnswerWords).Assembly);

    private static readonly FrozenDictionary<string, AnswerWords> ByLanguage = Language.All
        .ToFrozenDictionary(l => l.Code, l => new AnswerWords(key => TextsOf(key, l), l), StringComparer.Ordinal);

    private readonly FrozenDictionary<string, ImmutableArray<AnswerWord>> candidates;
    private readonly FrozenDictionary<AnswerWord, string> shown;
    private readonly FrozenSet<string> overLimit;
    private readonly FrozenSet<string> nothingShown;

    private AnswerWords(Func<string, string?> texts, Language language)
    {
        Language = language;
        var byText = new Dictionary<string, List<AnswerWord>>(StringComparer.Ordinal);
        var first = new Dictionary<AnswerWord, string>();
        foreach (var word in AnswerWord.All)
        {
            // The id itself is always understood, so that scripts work in every language.
            Add(byText, word.Text, word);
            foreach (var text in Split(texts(word.Id)))
            {
                first.TryAdd(word, text);
                Add(byText, text, word);
            }
        }

        candidates = byText.ToFrozenDictionary(pair => pair.Key, pair => pair.Value.ToImmutableArray());
        shown = first.ToFrozenDictionary();
        overLimit = Split(texts(OverLimitKey)).Select(TypedText.Key).ToFrozenSet(StringComparer.Ordinal);
        nothingShown = Split(texts(NothingShownKey)).Select(TypedText.Key).ToFrozenSet(StringComparer.Ordinal);
    }

    /// <summary>Shows the English words.</summary>
    public static AnswerWords English => In(Language.English);

    /// <summary>Shows the words of a language, and understands those of all.</summary>
    public static AnswerWords In(Language language)
    {
        ArgumentNullException.ThrowIfNull(language);
        return ByLanguage[language.Code];
    }

    /// <summary>Every text that may be typed for a key in a language, its own first.</summary>
    private static string TextsOf(string key, Language shown) => string.Join(
        ';', Language.All.OrderBy(l => l == shown ? 0 : 1).Select(l => Resources.Find(key, l)));

    /// <summary>Words from any other table: a key is an id, <c>over-limit</c> or <c>nothing-shown</c>.</summary>
    public static AnswerWords From(Func<string, string?> texts) => new(texts, Language.English);

    /// <summary>The language of what is shown.</summary>
    public Language Language { get; }

    /// <summary>The word as shown to people.</summary>
    public string TextOf(AnswerWord word) => shown.GetValueOrDefault(word, word.Text);

    /// <summary>The words that a text may stand for, in the order of <see cref="AnswerWord.All"/>; often none.</summary>
    public ImmutableArray<AnswerWord> Candidates(string text) =>
        candidates.GetValueOrDefault(TypedText.Key(TypedText.Plain(text)), []);

    internal bool IsOverLimit(string key) => overLimit.Contains(key);

    internal bool IsNothingShown(string key) => nothingShown.Contains(key);

    private static void Add(Dictionary<string, List<AnswerWord>> byText, string text, AnswerWord word)
    {
        var key = TypedText.Key(TypedText.Plain(text));
        if (!byText.TryGetValue(key, out var words)) byText[key] = words = [];
        if (!words.Contains(word)) words.Add(word);
    }

    private static string[] Split(string? texts) =>
        (texts ?? "").Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
