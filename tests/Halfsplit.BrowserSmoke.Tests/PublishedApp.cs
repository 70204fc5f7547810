using System.Diagnostics;
using Xunit;

namespace Halfsplit.BrowserSmoke.Tests;

/// <summary>The trimmed browser build, published under <c>artifacts/browser-smoke</c> of the repository.</summary>
internal static class PublishedApp
{
    /// <summary>
    /// Publishes the app and returns the folder to serve. Publishing again costs little when nothing changed,
    /// and a test of an old build would prove nothing.
    /// </summary>
    public static async Task<string> PublishAsync(CancellationToken cancellation)
    {
        var root = Root();
        var output = Path.Combine(root, "artifacts", "browser-smoke");
        if (Directory.Exists(output))
            Directory.Delete(output, recursive: true);

        var start = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = root,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var argument in (string[])["publish", "tests/Halfsplit.BrowserSmoke", "-c", "Release", "-o", output, "--nologo"])
            start.ArgumentList.Add(argument);

        using var process = Process.Start(start) ?? throw new InvalidOperationException("dotnet did not start");
        var standardOutput = process.StandardOutput.ReadToEndAsync(cancellation);
        var standardError = process.StandardError.ReadToEndAsync(cancellation);
        await process.WaitForExitAsync(cancellation);
        Assert.True(process.ExitCode == 0, $"The trimmed browser build failed:\n{await standardOutput}\n{await standardError}");
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
