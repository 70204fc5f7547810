using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.StaticFiles;
using Microsoft.Extensions.FileProviders;

namespace Halfsplit.Server;

/// <summary>Hands out the published app: each file in the smallest form that was made of it and that the browser takes.</summary>
internal static class AppFiles
{
    private static readonly (string Coding, string Ending)[] Forms = [("br", ".br"), ("gzip", ".gz")];

    public static void UseAppFiles(this WebApplication application, string folder)
    {
        var files = new PhysicalFileProvider(folder);
        var types = new FileExtensionContentTypeProvider();
        types.Mappings[".webmanifest"] = "application/manifest+json";
        types.Mappings[".dat"] = "application/octet-stream";
        types.Mappings[".dll"] = "application/octet-stream";
        application.UseDefaultFiles(new DefaultFilesOptions { FileProvider = files });
        application.Use((context, next) =>
        {
            ChooseForm(context, files, types);
            return next(context);
        });
        application.UseStaticFiles(new StaticFileOptions
        {
            FileProvider = files,
            ContentTypeProvider = new WithoutCompression(types),
            OnPrepareResponse = Prepare,
        });
    }

    private static void ChooseForm(HttpContext context, PhysicalFileProvider files, FileExtensionContentTypeProvider types)
    {
        var path = context.Request.Path.Value ?? "";
        if (!types.TryGetContentType(path, out _))
        {
            return;
        }

        var taken = context.Request.Headers.AcceptEncoding.ToString();
        foreach (var (coding, ending) in Forms)
        {
            if (taken.Contains(coding, StringComparison.Ordinal) && files.GetFileInfo(path + ending).Exists)
            {
                context.Request.Path = path + ending;
                context.Response.Headers.ContentEncoding = coding;
                break;
            }
        }
    }

    private static void Prepare(StaticFileResponseContext response)
    {
        // Always asked anew, seldom sent anew: the tag tells.
        response.Context.Response.Headers.CacheControl = "no-cache";
        response.Context.Response.Headers.Vary = "Accept-Encoding";
        response.Context.Response.Headers.XContentTypeOptions = "nosniff";
    }

    /// <summary>A compressed file has the type of what is in it.</summary>
    private sealed class WithoutCompression(FileExtensionContentTypeProvider types) : IContentTypeProvider
    {
        public bool TryGetContentType(string subpath, out string contentType)
        {
            var form = Forms.FirstOrDefault(f => subpath.EndsWith(f.Ending, StringComparison.Ordinal));
            return types.TryGetContentType(form.Ending is null ? subpath : subpath[..^form.Ending.Length], out contentType!);
        }
    }
}
