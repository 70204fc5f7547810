using Microsoft.Playwright;

namespace Halfsplit.BrowserSmoke.Tests;

/// <summary>The machine's own Chromium (Debian's package <c>chromium</c>); no browser is ever downloaded.</summary>
internal static class InstalledChromium
{
    private static readonly string[] Candidates = ["chromium", "chromium-browser"];

    public static Task<IBrowser> LaunchAsync(IPlaywright playwright) =>
        playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Find(),
            Headless = true,
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
                "--disable-background-networking", "--disable-component-update", "--disable-sync",
            ],
        });

    private static string Find()
    {
        var folders = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator);
        var found = Candidates.SelectMany(name => folders.Select(folder => Path.Combine(folder, name))).FirstOrDefault(File.Exists);
        return found ?? throw new InvalidOperationException("No Chromium on the PATH: install the package chromium.");
    }
}
