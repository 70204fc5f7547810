using Halfsplit.Server;

var folder = AppFolder.Find(args);
if (folder is null)
{
    await Console.Error.WriteLineAsync(
        "The app's files are not there. Publish them: dotnet publish src/Halfsplit.App --output artifacts/app");
    return 1;
}

var builder = WebApplication.CreateSlimBuilder(args);
if (string.IsNullOrEmpty(builder.Configuration["urls"]))
{
    builder.WebHost.UseUrls("http://127.0.0.1:5080");
}

builder.Logging.SetMinimumLevel(LogLevel.Warning);
var application = builder.Build();
application.UseMiddleware<LoopbackOnly>();
application.UseAppFiles(folder);
await application.StartAsync();
Console.WriteLine($"Halfsplit: {string.Join(", ", application.Urls)}");
await application.WaitForShutdownAsync();
return 0;
