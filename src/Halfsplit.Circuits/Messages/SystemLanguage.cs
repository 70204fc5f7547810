namespace Halfsplit.Circuits.Messages;

/// <summary>The language of a program that nobody told another one.</summary>
public static class SystemLanguage
{
    /// <summary>The environment variable that names the language.</summary>
    public const string Variable = "HALFSPLIT_LANGUAGE";

    /// <summary>Where the system tells its language, in the order of POSIX; programs without culture data have nobody else to ask.</summary>
    private static readonly string[] OfTheSystem = ["LC_ALL", "LC_MESSAGES", "LANG"];

    /// <summary>The environment variable's, else the system's, else English.</summary>
    /// <param name="environment">The value of an environment variable; null for one that is not set.</param>
    public static Language Of(Func<string, string?> environment)
    {
        ArgumentNullException.ThrowIfNull(environment);
        var system = OfTheSystem.Select(environment).FirstOrDefault(value => !string.IsNullOrEmpty(value));
        return Language.Find(environment(Variable)) ?? Language.Find(system) ?? Language.English;
    }
}
