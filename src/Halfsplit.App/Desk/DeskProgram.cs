using System.Diagnostics;
using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using Halfsplit.Circuits.Messages;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Desk;

/// <summary>The worker's way into the engine; <c>js/engine-worker.js</c> calls it.</summary>
[SupportedOSPlatform("browser")]
internal static partial class DeskProgram
{
    private static readonly EngineDesk Desk = new(EventStamps.OfThisMachine);

    /// <summary>Answers a request in JSON with a reply in JSON.</summary>
    [JSExport]
    internal static string Answer(string request)
    {
        var clock = Stopwatch.StartNew();
        var asked = DeskJson.ReadRequest(request);
        AppTexts.Language = Language.Find(asked.Language) ?? Language.English;
        return DeskJson.Write(Desk.Answer(asked) with { Worked = Math.Round(clock.Elapsed.TotalMilliseconds, 1) });
    }
}
