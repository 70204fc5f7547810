using System.Security.Cryptography;
using Microsoft.Playwright;
using Xunit;

namespace Halfsplit.App.Tests.Phones;

/// <summary>A new version is announced, waits for the last open job, and is taken when the person says so.</summary>
[Trait("Pace", "slow"), Collection("phones")]
public sealed class UpdateTests(PublishedApp app) : IDisposable
{
    private const string Changed = "css/circuit.css", Mark = "/* the new version */";

    private readonly string _folder = Directory.CreateTempSubdirectory("halfsplit-update-").FullName;

    [Fact]
    public async Task A_new_version_is_never_swapped_under_a_job()
    {
        var cancellation = TestContext.Current.CancellationToken;
        Copy(await app.FolderAsync(cancellation));
        await using var site = await AppSite.StartAsync(_folder, "", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address);
        await phone.ReadyAsync();
        await phone.OfflineReadyAsync();
        Release();

        // In the middle of a job it is told and waits.
        await phone.StartJobAsync("Left headlamp dark");
        await phone.Page.EvaluateAsync("async () => (await import('./js/updates.js')).look()");
        await phone.Page.GetByText(phone.Say("app.update.after-job")).WaitForAsync();
        Assert.Equal(0, await phone.Button("app.update.take").CountAsync());
        Assert.False(await IsNewAsync(phone.Page));

        // Nor is it taken while a job is open in another window.
        var other = await phone.Context.NewPageAsync();
        await other.GotoAsync(site.Address);
        await other.GetByText(phone.Say("app.update.ready")).WaitForAsync();
        await other.GetByText(phone.Say("app.update.take")).ClickAsync();
        await other.GetByText(phone.Say("app.update.job-open")).WaitForAsync();
        Assert.False(await IsNewAsync(other));
        await other.CloseAsync();

        await phone.Link("app.frame.back").ClickAsync();
        await phone.Button("app.update.take").ClickAsync();
        await phone.Page.WaitForFunctionAsync($"async () => (await (await fetch('{Changed}')).text()).includes('{Mark}')");
        await phone.ReadyAsync();
        await Assertions.Expect(phone.Page.Locator(".resume")).ToContainTextAsync("Left headlamp dark");
        phone.AssertNoComplaints();
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static Task<bool> IsNewAsync(IPage page) =>
        page.EvaluateAsync<bool>($"async () => (await (await fetch('{Changed}')).text()).includes('{Mark}')");

    private void Copy(string from)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var to = Path.Combine(_folder, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }
    }

    /// <summary>Puts a version beside it that differs in one file, as publishing would.</summary>
    private void Release()
    {
        var changed = Path.Combine(_folder, Changed);
        var list = Path.Combine(_folder, "service-worker-assets.js");
        var before = Hash(changed);
        File.AppendAllText(changed, Mark);
        var text = File.ReadAllText(list).Replace(before, Hash(changed), StringComparison.Ordinal);
        var version = System.Text.RegularExpressions.Regex.Match(text, "\"version\": *\"([^\"]+)\"").Groups[1].Value;
        File.WriteAllText(list, text.Replace(version, version + "new", StringComparison.Ordinal));
        foreach (var file in (string[])[changed, list])
        {
            File.Delete(file + ".br");
            File.Delete(file + ".gz");
        }
    }

    private static string Hash(string file) => "sha256-" + Convert.ToBase64String(SHA256.HashData(File.ReadAllBytes(file)));
}
