using Halfsplit.App.Desk;
using Halfsplit.App.Link;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Tests.Desk;

/// <summary>The real engine desk in this process, over a shelf in memory that keeps as the browser's does.</summary>
internal sealed class DeskEngine : IEngine
{
    private readonly MemoryShelf _shelf;
    private EngineDesk _desk = Fresh();

    public DeskEngine(MemoryShelf shelf) => _shelf = shelf;

    /// <summary>Set, the store keeps nothing from then on.</summary>
    public bool IsFull { get; set; }

    /// <summary>Set, the desk is at what it lays out until then, as on a slow phone; it answers the rest meanwhile.</summary>
    public TaskCompletionSource<DeskReply>? StillLaysOut { get; init; }

    /// <summary>How often all desks were let go of.</summary>
    public int Stops { get; private set; }

    private static EngineDesk Fresh() => new(new EventStamps(new EventIdSource(TimeProvider.System), TimeProvider.System));

    public Task<DeskReply> AskAsync(DeskRequest request)
    {
        if (request.Verb == "lay-out" && StillLaysOut is { } still)
        {
            return still.Task;
        }

        // Through JSON both ways, as between page and worker.
        var reply = DeskJson.ReadReply(DeskJson.Write(_desk.Answer(DeskJson.ReadRequest(DeskJson.Write(request)))));
        if (reply.Keep is { } order && (IsFull || !_shelf.Append(order)))
        {
            return Task.FromResult(new DeskReply { IsLost = true, Problem = AppTexts.Say(IsFull ? "app.store.full" : "app.store.changed") });
        }

        return Task.FromResult(reply);
    }

    public Task<int> ThinkersAsync() => Task.FromResult(0);

    public Task<DeskReply> ThinkAsync(int thinker, DeskRequest request) => throw new InvalidOperationException("Nobody thinks here.");

    public Task StopThinkingAsync() => Task.CompletedTask;

    public Task StopAsync()
    {
        Stops++;
        _desk = Fresh();
        return Task.CompletedTask;
    }
}

/// <summary>A shelf in memory.</summary>
internal sealed class MemoryShelf : IJobShelf
{
    private readonly Dictionary<string, List<KeptLine>> _jobs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Draft> _drafts = new(StringComparer.Ordinal);

    public bool Append(KeepOrder order)
    {
        var lines = _jobs.TryGetValue(order.Job, out var known) ? known : _jobs[order.Job] = [];
        if (lines.LastOrDefault()?.Id != order.After)
        {
            return false;
        }

        lines.AddRange(order.Lines);
        return true;
    }

    public Task<JobLines[]> AllAsync() =>
        Task.FromResult(_jobs.Select(j => new JobLines(j.Key, [.. j.Value.Select(l => l.Line)])).ToArray());

    public Task<string[]> LinesAsync(string job) =>
        Task.FromResult(_jobs.TryGetValue(job, out var lines) ? lines.Select(l => l.Line).ToArray() : []);

    public Task<int> MergeAsync(string job, KeptLine[] lines)
    {
        var known = _jobs.TryGetValue(job, out var own) ? own : _jobs[job] = [];
        var added = lines.Except(known).ToList();
        known.AddRange(added);
        known.Sort((a, b) => string.CompareOrdinal(a.Id, b.Id));
        return Task.FromResult(added.Count);
    }

    public Task<Draft> DraftAsync(string job) => Task.FromResult(_drafts.GetValueOrDefault(job, Draft.Empty));

    public Task KeepDraftAsync(string job, Draft draft)
    {
        _drafts[job] = draft;
        return Task.CompletedTask;
    }
}
