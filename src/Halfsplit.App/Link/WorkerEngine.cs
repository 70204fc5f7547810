using System.Text.Json;
using Halfsplit.App.Desk;

namespace Halfsplit.App.Link;

/// <summary>The engine in workers of the browser.</summary>
public sealed class WorkerEngine(Browser browser) : IEngine
{
    private const string Desk = "desk";

    private int? _thinkers;

    public async Task<DeskReply> AskAsync(DeskRequest request) => Read(await browser.AskEngineAsync(Desk, Spoken(request)));

    public async Task<int> ThinkersAsync() => _thinkers ??= await browser.ThinkersAsync();

    public async Task<DeskReply> ThinkAsync(int thinker, DeskRequest request) =>
        Read(await browser.AskEngineAsync(Thinker(thinker), Spoken(request)));

    public async Task StopThinkingAsync()
    {
        for (var thinker = 0; thinker < _thinkers; thinker++)
        {
            await browser.EndEngineAsync(Thinker(thinker));
        }
    }

    public async Task StopAsync()
    {
        await StopThinkingAsync();
        await browser.EndEngineAsync(Desk);
    }

    private static string Thinker(int number) => FormattableString.Invariant($"thinker-{number}");

    private static string Spoken(DeskRequest request) => DeskJson.Write(request with { Language = AppTexts.Language.Code });

    private static DeskReply Read(string json)
    {
        // Most replies are steps with their pictures: they are read once.
        if (!json.StartsWith("{\"lost\"", StringComparison.Ordinal))
        {
            return DeskJson.ReadReply(json);
        }

        using var document = JsonDocument.Parse(json);
        if (document.RootElement.TryGetProperty("detail", out var detail))
        {
            Console.Error.WriteLine(detail.GetString());
        }

        return new DeskReply { Problem = Why(document.RootElement.GetProperty("lost").GetString()), IsLost = true };
    }

    private static string Why(string? name) => AppTexts.Say(name switch
    {
        "ChangedError" => "app.store.changed",
        "QuotaExceededError" => "app.store.full",
        "BlockedError" => "app.store.blocked",
        _ => "app.store.trouble",
    });
}
