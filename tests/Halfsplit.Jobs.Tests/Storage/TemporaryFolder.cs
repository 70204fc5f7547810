using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Storage;
using Xunit;

namespace Halfsplit.Jobs.Tests.Storage;

/// <summary>A folder that is gone after the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private readonly string path = Directory.CreateTempSubdirectory("halfsplit-jobs-").FullName;

    public static JobOpened Opening => new(
        EventIdSource.Shared.Next(), DateTimeOffset.UnixEpoch, "pump", "sheet: 1\ntitle: Pump\n", "1", "0.1.0");

    public string File(string name) => System.IO.Path.Combine(path, name);

    public string NewJob()
    {
        var job = File("car.job.jsonl");
        using var made = JobFile.Create(job, Opening).Value;
        Assert.NotNull(made);
        return job;
    }

    public void Dispose() => Directory.Delete(path, recursive: true);
}
