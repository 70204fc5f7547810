using Halfsplit.Testing;
using Xunit;

namespace Halfsplit.BrowserSmoke.Tests;

/// <summary>The trimmed browser build, published under <c>artifacts/browser-smoke</c> of the repository.</summary>
internal static class PublishedApp
{
    /// <summary>Publishes the app anew, since a test of an old build would prove nothing, and returns the folder to serve.</summary>
    public static async Task<string> PublishAsync(CancellationToken cancellation)
    {
        var root = Root();
        var output = Path.Combine(root, "artifacts", "browser-smoke");
        if (Directory.Exists(output))
            Directory.Delete(output, recursive: true);

        var publish = await ChildProcess.RunAsync(
            "dotnet", root, ["publish", "tests/Halfsplit.BrowserSmoke", "--configuration", "Release", "--output", output], cancellation);
        Assert.True(publish.ExitCode == 0, $"The trimmed browser build failed:\n{publish.Output}");
        return Path.Combine(output, "wwwroot");
    }

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Halfsplit.slnx")))
                return folder.FullName;
        }

        throw new InvalidOperationException($"No Halfsplit.slnx above {AppContext.BaseDirectory}");
    }
}
