using Halfsplit.Server;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace Halfsplit.App.Tests.Phones;

/// <summary>A host that has the app's folder under a path of its own, as the server hands it out, and counts what it sends.</summary>
internal sealed class AppSite : IAsyncDisposable
{
    private readonly WebApplication _application;
    private readonly SentBytes _sent;

    private AppSite(WebApplication application, string path, SentBytes sent)
    {
        _application = application;
        _sent = sent;
        Address = application.Urls.Single() + path + "/";
    }

    public string Address { get; }

    /// <summary>Bytes of all bodies sent so far, as they went over the wire.</summary>
    public long Sent => _sent.Total;

    public static async Task<AppSite> StartAsync(string folder, string path, CancellationToken cancellation)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        var application = builder.Build();
        var sent = new SentBytes();
        application.Use(sent.CountAsync);
        application.UsePathBase(path);
        application.UseAppFiles(folder);
        await application.StartAsync(cancellation);
        return new AppSite(application, path, sent);
    }

    public ValueTask DisposeAsync() => _application.DisposeAsync();

    private sealed class SentBytes
    {
        private long _total;

        public long Total => Interlocked.Read(ref _total);

        public async Task CountAsync(Microsoft.AspNetCore.Http.HttpContext context, Microsoft.AspNetCore.Http.RequestDelegate next)
        {
            await next(context);
            Interlocked.Add(ref _total, context.Response.StatusCode == 200 ? context.Response.ContentLength ?? 0 : 0);
        }
    }
}
