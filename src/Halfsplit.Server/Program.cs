using Halfsplit.Server;

var folder = AppFolder.Find(args);
if (folder is null)
{
    await Console.Error.WriteLineAsync(ServerTexts.Say("server.no-app"));
    return 1;
}

var builder = WebApplication.CreateSlimBuilder(args);
var addresses = builder.Configuration["urls"] is { Length: > 0 } named ? named : "http://127.0.0.1:5080";
if (addresses.Split(';').FirstOrDefault(a => !Loopback.IsAddress(a)) is { } open)
{
    await Console.Error.WriteLineAsync(ServerTexts.Say("server.not-loopback", open));
    return 1;
}

builder.WebHost.UseUrls(addresses);
builder.Logging.SetMinimumLevel(LogLevel.Critical);
var application = builder.Build();
application.UseMiddleware<LoopbackOnly>();
application.UseAppFiles(folder);
try
{
    await application.StartAsync();
}
catch (IOException taken)
{
    await Console.Error.WriteLineAsync(ServerTexts.Say("server.cannot-listen", addresses, taken.Message));
    return 1;
}

Console.WriteLine(ServerTexts.Say("server.listens", string.Join(", ", application.Urls)));
await application.WaitForShutdownAsync();
return 0;
