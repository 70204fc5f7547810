using System.Text.Json;
using Halfsplit.App.Desk;

namespace Halfsplit.App.Link;

/// <summary>The jobs that this device keeps. Events are added by the engine's desk; here they are read, taken in and given out.</summary>
public interface IJobShelf
{
    Task<JobLines[]> AllAsync();

    Task<string[]> LinesAsync(string job);

    /// <summary>Takes in a copy of a job; what is there already stays as it is.</summary>
    /// <returns>How many events were new.</returns>
    Task<int> MergeAsync(string job, KeptLine[] lines);

    Task<Draft> DraftAsync(string job);

    Task KeepDraftAsync(string job, Draft draft);
}

/// <summary>The shelf in the browser's IndexedDB.</summary>
public sealed class BrowserShelf(Browser browser) : IJobShelf
{
    public async Task<JobLines[]> AllAsync() => await browser.CallAsync<JobLines[]>("store", "all");

    public Task<string[]> LinesAsync(string job) => browser.CallAsync<string[]>("store", "lines", job);

    public Task<int> MergeAsync(string job, KeptLine[] lines) => browser.CallAsync<int>("store", "merge", job, lines);

    public async Task<Draft> DraftAsync(string job) =>
        await browser.CallAsync<string?>("store", "draft", job) is { } text
            ? JsonSerializer.Deserialize(text, DeskJson.Default.Draft) ?? Draft.Empty
            : Draft.Empty;

    public Task KeepDraftAsync(string job, Draft draft) =>
        browser.DoAsync("store", "keepDraft", job, JsonSerializer.Serialize(draft, DeskJson.Default.Draft));
}
