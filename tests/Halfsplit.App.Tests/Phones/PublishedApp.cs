using Halfsplit.Testing;
using Xunit;

[assembly: AssemblyFixture(typeof(Halfsplit.App.Tests.Phones.PublishedApp))]

namespace Halfsplit.App.Tests.Phones;

/// <summary>The app as it is given to a host: trimmed and compressed, published anew once for a run of the tests.</summary>
public sealed class PublishedApp
{
    private static readonly SemaphoreSlim Gate = new(1, 1);
    private string? _folder;

    /// <summary>The repository.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The folder of static files.</summary>
    public async Task<string> FolderAsync(CancellationToken cancellation)
    {
        await Gate.WaitAsync(cancellation);
        try
        {
            return _folder ??= await PublishAsync(cancellation);
        }
        finally
        {
            Gate.Release();
        }
    }

    private static async Task<string> PublishAsync(CancellationToken cancellation)
    {
        var output = Path.Combine(Root, "artifacts", "app-tests");
        if (Directory.Exists(output))
        {
            Directory.Delete(output, recursive: true);
        }

        var publish = await ChildProcess.RunAsync(
            "dotnet", Root, ["publish", "src/Halfsplit.App", "--configuration", "Release", "--output", output], cancellation);
        Assert.True(publish.ExitCode == 0, $"Publishing the app failed:\n{publish.Output}");
        return Path.Combine(output, "wwwroot");
    }

    private static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Halfsplit.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException($"No Halfsplit.slnx above {AppContext.BaseDirectory}");
    }
}
