using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.FileProviders;
using Microsoft.Extensions.Hosting;

namespace Halfsplit.BrowserSmoke.Tests;

/// <summary>Serves one folder on a free port of this machine's loopback address, until disposed.</summary>
internal sealed class LoopbackSite : IAsyncDisposable
{
    private readonly WebApplication application;

    private LoopbackSite(WebApplication application) => this.application = application;

    /// <summary>Where the site answers, such as <c>http://127.0.0.1:43211</c>.</summary>
    public string Address => application.Urls.Single();

    public static async Task<LoopbackSite> StartAsync(string folder, CancellationToken cancellation)
    {
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions { ContentRootPath = folder });
        builder.WebHost.UseKestrelCore().UseUrls("http://127.0.0.1:0");
        var application = builder.Build();
        var files = new PhysicalFileProvider(folder);
        application.UseDefaultFiles(new DefaultFilesOptions { FileProvider = files });
        application.UseStaticFiles(new StaticFileOptions { FileProvider = files });
        await application.StartAsync(cancellation);
        return new LoopbackSite(application);
    }

    public ValueTask DisposeAsync() => application.DisposeAsync();
}
