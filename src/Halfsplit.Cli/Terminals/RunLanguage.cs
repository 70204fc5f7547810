using Halfsplit.Circuits.Messages;

namespace Halfsplit.Cli.Terminals;

/// <summary>Which language a run speaks.</summary>
public static class RunLanguage
{
    /// <summary>The environment variable that names the language.</summary>
    public const string Variable = "HALFSPLIT_LANGUAGE";

    private const string Option = "--language", MachineOutput = "--json";

    /// <summary>Where the system tells its language, in the order of POSIX; the program carries no culture data to ask.</summary>
    private static readonly string[] OfTheSystem = ["LC_ALL", "LC_MESSAGES", "LANG"];

    /// <summary>The language that a command line asks for, else the terminal's; English for what a script reads, the same everywhere.</summary>
    public static Language Of(IReadOnlyList<string> arguments, Language usual)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        ArgumentNullException.ThrowIfNull(usual);
        return arguments.Contains(MachineOutput) ? Language.English : Language.Find(Asked(arguments)) ?? usual;
    }

    /// <summary>The language where the command line names none: the environment variable's, else the system's, else English.</summary>
    public static Language Usual(Func<string, string?> environment)
    {
        ArgumentNullException.ThrowIfNull(environment);
        var system = OfTheSystem.Select(environment).FirstOrDefault(value => !string.IsNullOrEmpty(value));
        return Language.Find(environment(Variable)) ?? Language.Find(system) ?? Language.English;
    }

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
}
