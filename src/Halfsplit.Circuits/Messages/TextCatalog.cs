namespace Halfsplit.Circuits.Messages;

/// <summary>Finds the words for messages in the texts of all projects that speak.</summary>
public sealed class TextCatalog
{
    private readonly Func<Language> _language;
    private readonly TextSource[] _sources;

    /// <summary>A catalogue whose language may change from one moment to the next.</summary>
    /// <param name="language">Asked whenever something is said.</param>
    /// <param name="sources">One for each project, asked in this order.</param>
    public TextCatalog(Func<Language> language, params TextSource[] sources)
    {
        ArgumentNullException.ThrowIfNull(language);
        _language = language;
        _sources = sources;
    }

    /// <summary>A catalogue of one language.</summary>
    public TextCatalog(Language language, params TextSource[] sources)
        : this(() => language, sources) => ArgumentNullException.ThrowIfNull(language);

    /// <summary>The language that is spoken now.</summary>
    public Language Language => _language();

    /// <summary>The same texts, always in this language.</summary>
    public TextCatalog In(Language language) => new(language, _sources);

    /// <summary>The text of a message. A code without a text is shown as it is, so that nothing is lost.</summary>
    public string Say(Message message)
    {
        ArgumentNullException.ThrowIfNull(message);
        var arguments = new object[message.Arguments.Length];
        for (var i = 0; i < arguments.Length; i++)
        {
            arguments[i] = message.Arguments[i] switch
            {
                Message inner => Say(inner),
                double number => new Figure(number, ""),
                var other => other,
            };
        }

        var text = Find(message.Code);
        return text is null
            ? message.ToString()
            : arguments.Length == 0 ? text : string.Format(Language.Formats, text, arguments);
    }

    /// <summary>The text of a code without arguments.</summary>
    public string Say(string code) => Say(new Message(code));

    /// <summary>True if there is a text for this code.</summary>
    public bool Has(string code) => Find(code) is not null;

    private string? Find(string code)
    {
        var language = Language;
        foreach (var source in _sources)
        {
            if (source.Find(code, language) is { } text)
            {
                return text;
            }
        }

        return null;
    }
}
