using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

[assembly: SupportedOSPlatform("browser")]

namespace Halfsplit.BrowserSmoke;

/// <summary>The page's way into the engine; <c>main.js</c> calls <see cref="Run"/>.</summary>
internal static partial class Program
{
    private static void Main()
    {
    }

    [JSExport]
    internal static string Run() => SmokeJob.Run();
}
