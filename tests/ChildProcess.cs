using System.Diagnostics;

namespace Halfsplit.Testing;

/// <summary>Runs another program to its end and keeps what it printed.</summary>
/// <param name="Output">Standard output, then standard error.</param>
internal sealed record ChildProcess(int ExitCode, string Output)
{
    public static async Task<ChildProcess> RunAsync(
        string program, string folder, IEnumerable<string> arguments, CancellationToken cancellation)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start");
        process.StandardInput.Close();
        // Read both at once: a full pipe would stop the program for ever.
        var output = process.StandardOutput.ReadToEndAsync(cancellation);
        var error = process.StandardError.ReadToEndAsync(cancellation);
        await process.WaitForExitAsync(cancellation);
        return new ChildProcess(process.ExitCode, await output + await error);
    }
}
