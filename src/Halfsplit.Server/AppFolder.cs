using System.Reflection;

namespace Halfsplit.Server;

/// <summary>Where the published app lies.</summary>
internal static class AppFolder
{
    /// <summary>
    /// The folder named with <c>--app</c>, else the one beside the program, else the one this program was built with. Null where
    /// none of them holds an app.
    /// </summary>
    public static string? Find(string[] arguments)
    {
        var named = Array.IndexOf(arguments, "--app");
        string?[] candidates = named >= 0
            ? [arguments.ElementAtOrDefault(named + 1)]
            : [Path.Combine(AppContext.BaseDirectory, "app"), BuiltWith];
        return candidates.FirstOrDefault(folder => folder is not null && File.Exists(Path.Combine(folder, "index.html"))) is { } found
            ? Path.GetFullPath(found)
            : null;
    }

    private static string? BuiltWith => typeof(AppFolder).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .FirstOrDefault(a => a.Key == "AppFolder")?.Value;
}
