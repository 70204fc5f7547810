namespace Halfsplit.Cli.Printing;

/// <summary>Finds a browser of this machine that prints without a window; none is ever downloaded.</summary>
public static class InstalledBrowser
{
    /// <summary>The environment variable that names the program, where it is none of the usual ones.</summary>
    public const string Variable = "HALFSPLIT_BROWSER";

    private static readonly string[] Names = ["chromium", "chromium-browser"];

    /// <summary>The program's file; null where none is installed, or the one that the variable names is not there.</summary>
    public static string? Find(Func<string, string?> environment)
    {
        ArgumentNullException.ThrowIfNull(environment);
        if (environment(Variable) is { Length: > 0 } named)
        {
            return File.Exists(named) ? named : OnPath(environment, named);
        }

        return Names.Select(name => OnPath(environment, name)).FirstOrDefault(found => found is not null);
    }

    private static string? OnPath(Func<string, string?> environment, string name)
    {
        string[] endings = OperatingSystem.IsWindows() ? [".exe", ""] : [""];
        return (environment("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(folder => endings.Select(ending => Path.Combine(folder, name + ending)))
            .FirstOrDefault(File.Exists);
    }
}
