using System.Diagnostics.CodeAnalysis;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Halfsplit.App.Link;

/// <summary>What only the browser can do. Each group of functions lies in a file of its own under <c>js/</c>.</summary>
public sealed class Browser(IJSRuntime script) : IAsyncDisposable
{
    private readonly Dictionary<string, Task<IJSObjectReference>> _modules = new(StringComparer.Ordinal);

    private const DynamicallyAccessedMemberTypes Answered =
        DynamicallyAccessedMemberTypes.PublicConstructors | DynamicallyAccessedMemberTypes.PublicFields
        | DynamicallyAccessedMemberTypes.PublicProperties;

    public Task<string> AskEngineAsync(string which, string request) => CallAsync<string>("engine", "ask", which, request);

    public Task EndEngineAsync(string which) => DoAsync("engine", "end", which);

    public Task<int> ThinkersAsync() => CallAsync<int>("engine", "thinkers");

    public Task<bool> SpeakAsync(string text) => CallAsync<bool>("browser", "speak", text, AppTexts.Language.Code);

    public Task HushAsync() => DoAsync("browser", "hush");

    public Task StayAwakeAsync(bool wanted) => DoAsync("browser", "stayAwake", wanted);

    public Task JobIsOpenAsync(bool open) => DoAsync("browser", "jobIsOpen", open);

    public Task<string?> SettingAsync(string name) => CallAsync<string?>("browser", "setting", name);

    public Task KeepSettingAsync(string name, string value) => DoAsync("browser", "keepSetting", name, value);

    public Task ThemeAsync(string name) => DoAsync("browser", "theme", name);

    /// <summary>Says the language of the page, and puts into it what is shown when the app itself can't speak any more.</summary>
    public Task LanguageAsync(string code, string fault, string again) => DoAsync("browser", "language", code, fault, again);

    public Task<string[]> LanguagesAsync() => CallAsync<string[]>("browser", "languages");

    public Task DownloadAsync(string name, string type, string text) => DoAsync("browser", "download", name, type, text);

    public Task<bool> ShareAsync(string name, string type, string text, string title) =>
        CallAsync<bool>("browser", "share", name, type, text, title);

    /// <summary>Prints what is in a frame.</summary>
    public Task PrintAsync(string frame) => DoAsync("browser", "print", frame);

    public Task FocusAsync(string selector) => DoAsync("browser", "focus", selector);

    /// <summary>Moves an element to where it is seen.</summary>
    public Task ShowAsync(string selector) => DoAsync("browser", "show", selector);

    /// <summary>Goes to a screen. Not through the navigation manager: it tells nobody where only the part behind the hash changes.</summary>
    public Task GoAsync(Address address) => DoAsync("browser", "go", address.ToString()[2..]);

    public Task ToTopAsync() => DoAsync("browser", "toTop");

    public Task OpenDialogAsync(ElementReference dialog) => DoAsync("browser", "openDialog", dialog);

    public Task CloseDialogAsync(ElementReference dialog) => DoAsync("browser", "closeDialog", dialog);

    /// <summary>Gives the drawings in an element the colours of the page.</summary>
    public Task ColourDrawingAsync(ElementReference frame) => DoAsync("drawing", "colour", frame);

    public Task WatchUpdatesAsync(DotNetObjectReference<AppFrame> listener) => DoAsync("updates", "start", listener);

    public Task<bool> TakeUpdateAsync() => CallAsync<bool>("updates", "take");

    /// <summary>Calls a function of <c>js/</c><paramref name="file"/>.</summary>
    internal async Task<T> CallAsync<[DynamicallyAccessedMembers(Answered)] T>(string file, string function, params object?[] arguments) =>
        await (await ModuleAsync(file)).InvokeAsync<T>(function, arguments);

    internal async Task DoAsync(string file, string function, params object?[] arguments) =>
        await (await ModuleAsync(file)).InvokeVoidAsync(function, arguments);

    public async ValueTask DisposeAsync()
    {
        foreach (var module in _modules.Values)
        {
            await (await module).DisposeAsync();
        }
    }

    private Task<IJSObjectReference> ModuleAsync(string file)
    {
        if (!_modules.TryGetValue(file, out var module))
        {
            _modules[file] = module = script.InvokeAsync<IJSObjectReference>("import", $"./js/{file}.js").AsTask();
        }

        return module;
    }
}
