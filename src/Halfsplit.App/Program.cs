using Halfsplit.App;
using Halfsplit.App.Link;
using Halfsplit.App.Screens;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Microsoft.Extensions.DependencyInjection;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<AppFrame>("#app");
builder.Services.AddSingleton<Browser>();
builder.Services.AddSingleton<IEngine, WorkerEngine>();
builder.Services.AddSingleton<IJobShelf, BrowserShelf>();
builder.Services.AddSingleton<Workbench>();
var host = builder.Build();
// Before anything is drawn, so that no screen begins in another language.
await SettingsScreen.ApplyAsync(host.Services.GetRequiredService<Browser>());
await host.RunAsync();
