using Halfsplit.App;
using Halfsplit.App.Link;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Microsoft.Extensions.DependencyInjection;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<AppFrame>("#app");
builder.Services.AddSingleton<Browser>();
builder.Services.AddSingleton<IEngine, WorkerEngine>();
builder.Services.AddSingleton<IJobShelf, BrowserShelf>();
builder.Services.AddSingleton<Workbench>();
await builder.Build().RunAsync();
