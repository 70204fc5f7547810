using System.Globalization;
using System.Resources;

namespace Halfsplit.Circuits.Messages;

/// <summary>Finds the words for messages in the resource files of all projects that speak.</summary>
/// <param name="language">Which resource language to use; numbers are always written with a decimal point.</param>
/// <param name="sources">One resource manager per project, asked in this order.</param>
public sealed class TextCatalog(CultureInfo language, params ResourceManager[] sources)
{
    /// <summary>The text of a message. A code without a text is shown as it is, so that nothing is lost.</summary>
    public string Say(Message message)
    {
        var arguments = new object[message.Arguments.Length];
        for (var i = 0; i < arguments.Length; i++)
        {
            arguments[i] = message.Arguments[i] is Message inner ? Say(inner) : message.Arguments[i];
        }

        var text = Find(message.Code);
        return text is null
            ? message.ToString()
            : arguments.Length == 0 ? text : string.Format(CultureInfo.InvariantCulture, text, arguments);
    }

    /// <summary>The text of a code without arguments.</summary>
    public string Say(string code) => Say(new Message(code));

    /// <summary>True if some resource file has a text for this code.</summary>
    public bool Has(string code) => Find(code) is not null;

    private string? Find(string code)
    {
        foreach (var source in sources)
        {
            if (source.GetString(code, language) is { } text)
            {
                return text;
            }
        }

        return null;
    }
}
