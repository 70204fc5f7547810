using Halfsplit.Architecture.Tests.House;
using Halfsplit.Testing;
using Xunit;

namespace Halfsplit.Architecture.Tests;

/// <summary>The terminal program, packed as the README says, installs from a folder and runs.</summary>
[Trait("Pace", "slow")]
public sealed class PackedToolTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("halfsplit-tool-").FullName;

    [Fact]
    public async Task The_packed_tool_installs_and_runs()
    {
        var packages = Path.Combine(folder, "packages");
        var installed = Path.Combine(folder, "tools");

        await Succeed("dotnet", "pack", "src/Halfsplit.Cli", "--configuration", "Release", "--output", packages);
        await Succeed("dotnet", "tool", "install", "Halfsplit", "--tool-path", installed, "--source", packages);
        var help = await Succeed(Path.Combine(installed, "halfsplit"), "--help");

        Assert.Contains("halfsplit", help, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private static async Task<string> Succeed(string program, params string[] arguments)
    {
        var run = await ChildProcess.RunAsync(program, Repository.Root, arguments, TestContext.Current.CancellationToken);
        Assert.True(run.ExitCode == 0, $"{program} {string.Join(' ', arguments)}\n{run.Output}");
        return run.Output;
    }
}
