using System.Text.Json;
using Halfsplit.App.Desk;

namespace Halfsplit.App.Link;

/// <summary>The engine in workers of the browser.</summary>
public sealed class WorkerEngine(Browser browser) : IEngine
{
    private bool? _mayThinkAhead;

    public async Task<DeskReply> AskAsync(DeskRequest request) => Read(await browser.AskEngineAsync("desk", Spoken(request)));

    public async Task<DeskReply?> ThinkAsync(DeskRequest request)
    {
        _mayThinkAhead ??= await browser.MayThinkAheadAsync();
        return _mayThinkAhead.Value ? Read(await browser.AskEngineAsync("ahead", Spoken(request))) : null;
    }

    public async Task StopThinkingAsync() => await browser.EndEngineAsync("ahead");

    private static string Spoken(DeskRequest request) => DeskJson.Write(request with { Language = AppTexts.Language.Code });

    private static DeskReply Read(string json)
    {
        using var document = JsonDocument.Parse(json);
        if (!document.RootElement.TryGetProperty("lost", out var lost))
        {
            return DeskJson.ReadReply(json);
        }

        if (document.RootElement.TryGetProperty("detail", out var detail))
        {
            Console.Error.WriteLine(detail.GetString());
        }

        return new DeskReply { Problem = Why(lost.GetString()), IsLost = true };
    }

    private static string Why(string? name) => AppTexts.Say(name switch
    {
        "ChangedError" => "app.store.changed",
        "QuotaExceededError" => "app.store.full",
        "BlockedError" => "app.store.blocked",
        _ => "app.store.trouble",
    });
}
