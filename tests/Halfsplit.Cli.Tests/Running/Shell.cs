using System.Text.Json;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Terminals;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Tests.Running;

/// <summary>What a command line printed and how it ended.</summary>
internal sealed record Ran(int Code, string Output, string Error)
{
    public JsonElement Json => JsonDocument.Parse(Output).RootElement;
}

/// <summary>Runs the program inside the test, in a folder of its own that is gone afterwards.</summary>
internal sealed class Shell : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("halfsplit-cli-").FullName;

    /// <summary>The person's language, as the machine tells it; not the culture of the run.</summary>
    public Language Language { get; init; } = Language.English;

    /// <summary>The variables that the program sees.</summary>
    public Dictionary<string, string> Environment { get; } = new(StringComparer.Ordinal) { ["PATH"] = System.Environment.GetEnvironmentVariable("PATH") ?? "" };

    public string Job => File("car.job.jsonl");

    public string File(string name) => Path.Combine(_folder, name);

    public Ran Run(params string[] arguments) => RunWith("", arguments);

    /// <param name="typed">The whole standard input.</param>
    public Ran RunWith(string typed, params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var input = new StringReader(typed);
        var stamps = new EventStamps(new EventIdSource(new FixedClock()), new FixedClock());
        var code = HalfsplitProgram.Run(arguments, new Terminal(input, output, error, stamps: stamps)
        {
            Language = Language,
            Environment = name => Environment.GetValueOrDefault(name),
        });
        return new Ran(code, Clean(output.ToString()), Clean(error.ToString()));
    }

    /// <summary>A job on a shipped sheet with these answers recorded.</summary>
    public Shell WithJob(string sheet, params string[] readings)
    {
        Expect(0, Run("open", sheet, "--job", Job));
        foreach (var reading in readings)
        {
            Expect(0, Run("record", Job, reading));
        }

        return this;
    }

    public static Ran Expect(int code, Ran ran)
    {
        Xunit.Assert.True(ran.Code == code, $"exit code {ran.Code} instead of {code}\n{ran.Output}\n{ran.Error}");
        return ran;
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>The folder's name differs from run to run, and its length moves line breaks: "JOB" stands for the file.</summary>
    private string Clean(string text) => text.Replace(_folder + Path.DirectorySeparatorChar, "", StringComparison.Ordinal)
        .Replace("\r\n", "\n", StringComparison.Ordinal);
}
