using System.Globalization;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Cli.Terminals;

/// <summary>
/// The language of one run, held as the UI culture until the run ends. The culture of numbers and dates is left alone: nothing
/// here goes by it.
/// </summary>
public sealed class RunLanguage : IDisposable
{
    /// <summary>The environment variable that names the language.</summary>
    public const string Variable = "HALFSPLIT_LANGUAGE";

    private const string Option = "--language", MachineOutput = "--json";

    private readonly CultureInfo _before = CultureInfo.CurrentUICulture;

    private RunLanguage(Language language)
    {
        CultureInfo.CurrentUICulture = language == Language.English
            ? CultureInfo.InvariantCulture
            : CultureInfo.GetCultureInfo(language.Code);
    }

    /// <summary>The language that a command line asks for, else the terminal's; English for what a script reads, the same everywhere.</summary>
    public static RunLanguage Begin(IReadOnlyList<string> arguments, Language usual)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        ArgumentNullException.ThrowIfNull(usual);
        return new RunLanguage(arguments.Contains(MachineOutput) ? Language.English : Language.Find(Asked(arguments)) ?? usual);
    }

    /// <summary>The language of this process: the environment variable's, else the system's.</summary>
    public static Language OfThisProcess() => Language.Find(Environment.GetEnvironmentVariable(Variable)) ?? Language.Current;

    /// <summary>What follows the option; null where it is not there.</summary>
    public static string? Asked(IReadOnlyList<string> arguments)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        for (var i = 0; i < arguments.Count; i++)
        {
            if (arguments[i] == Option)
            {
                return i + 1 < arguments.Count ? arguments[i + 1] : null;
            }

            if (arguments[i].StartsWith(Option + "=", StringComparison.Ordinal))
            {
                return arguments[i][(Option.Length + 1)..];
            }
        }

        return null;
    }

    public void Dispose() => CultureInfo.CurrentUICulture = _before;
}
