using System.Diagnostics;
using System.Globalization;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Benchmarks.Processes;

/// <summary>Whole-process time and peak memory of <c>halfsplit next</c>, from start to exit, on jobs with two readings.</summary>
internal static class ProcessTable
{
    private const int Runs = 7;

    public static void Print()
    {
        var program = Path.Combine(Root(), "src/Halfsplit.Cli/bin/Release/net10.0/halfsplit.dll");
        if (!File.Exists(program))
        {
            Console.WriteLine("Build the terminal program first: dotnet build -c Release src/Halfsplit.Cli");
            return;
        }

        Console.WriteLine($"{"sheet",-12} {"median s",9} {"peak MB",8}");
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            foreach (var sheet in ShippedSheets.Names)
            {
                var job = Path.Combine(folder.FullName, sheet + ".jsonl");
                Run(program, "open", sheet, "--job", job);
                Run(program, "record", job, "dead");
                Run(program, "record", job, "12.6 V");
                var runs = Enumerable.Range(0, Runs).Select(_ => Run(program, "next", job, "--json")).ToList();
                Console.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{sheet,-12} {runs.Select(r => r.Seconds).Order().ElementAt(Runs / 2),9:0.00} {runs.Max(r => r.PeakBytes) / 1e6,8:0}"));
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static (double Seconds, long PeakBytes) Run(string program, params string[] arguments)
    {
        var start = Stopwatch.GetTimestamp();
        using var process = Process.Start(new ProcessStartInfo("dotnet", [program, .. arguments]) { RedirectStandardOutput = true })!;
        var output = process.StandardOutput.ReadToEndAsync();
        var peak = 0L;
        while (!process.WaitForExit(5))
        {
            try
            {
                process.Refresh();
                peak = Math.Max(peak, process.PeakWorkingSet64);
            }
            catch (InvalidOperationException)
            {
                // It ended between the two lines; the last look stands.
            }
        }

        output.Wait();
        return (Stopwatch.GetElapsedTime(start).TotalSeconds, peak);
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Halfsplit.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? ".";
    }
}
