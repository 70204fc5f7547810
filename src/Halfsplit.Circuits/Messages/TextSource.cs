using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Resources;

namespace Halfsplit.Circuits.Messages;

/// <summary>
/// The texts of one project in every language: a resource for English, and one with the language's code behind its name for
/// each other. All lie in the project's own assembly, so that an app changes its language without fetching anything.
/// </summary>
/// <param name="name">The English resource's name, such as <c>Halfsplit.Circuits.Texts</c>.</param>
public sealed class TextSource(string name, Assembly assembly)
{
    private readonly ResourceManager _english = new(name, assembly);

    private readonly Dictionary<string, ResourceManager> _others = Language.All
        .Where(l => l != Language.English)
        .ToDictionary(l => l.Code, l => new ResourceManager($"{name}.{l.Code}", assembly), StringComparer.Ordinal);

    /// <summary>The text of a code; null where English has none either.</summary>
    public string? Find(string code, Language language)
    {
        ArgumentNullException.ThrowIfNull(language);
        var own = _others.TryGetValue(language.Code, out var other)
            ? other.GetString(code, CultureInfo.InvariantCulture)
            : null;
        return own ?? _english.GetString(code, CultureInfo.InvariantCulture);
    }

    /// <summary>Every text that a language has of its own, by its code.</summary>
    public IReadOnlyDictionary<string, string> All(Language language)
    {
        ArgumentNullException.ThrowIfNull(language);
        var resource = _others.GetValueOrDefault(language.Code, _english);
        return resource.GetResourceSet(CultureInfo.InvariantCulture, createIfNotExists: true, tryParents: false)!
            .Cast<DictionaryEntry>()
            .ToDictionary(text => (string)text.Key, text => (string)text.Value!, StringComparer.Ordinal);
    }
}
