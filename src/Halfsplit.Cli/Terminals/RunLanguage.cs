using Halfsplit.Circuits.Messages;

namespace Halfsplit.Cli.Terminals;

/// <summary>Which language a run speaks.</summary>
public static class RunLanguage
{
    private const string Option = "--language", MachineOutput = "--json";

    /// <summary>The language that a command line asks for, else the terminal's; English for what a script reads, the same everywhere.</summary>
    public static Language Of(IReadOnlyList<string> arguments, Language usual)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        ArgumentNullException.ThrowIfNull(usual);
        return arguments.Contains(MachineOutput) ? Language.English : Language.Find(Asked(arguments)) ?? usual;
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
