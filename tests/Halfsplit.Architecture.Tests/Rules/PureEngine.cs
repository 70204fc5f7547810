using Halfsplit.Architecture.Tests.House;

namespace Halfsplit.Architecture.Tests.Rules;

/// <summary>
/// Nothing below Jobs touches files, clocks, networks, a console, threads or chance without a seed, so that the same
/// engine gives the same answer in a browser on a phone.
/// </summary>
internal static class PureEngine
{
    /// <summary>The projects below Jobs.</summary>
    public static IReadOnlyList<string> Projects { get; } =
        ["Halfsplit.Circuits", "Halfsplit.Simulation", "Halfsplit.Diagnosis", "Halfsplit.Bench", "Halfsplit.Drawing"];

    // Of System.IO, only what works on memory and on the streams of embedded resources.
    private static readonly HashSet<string> HarmlessStreams = new(StringComparer.Ordinal)
    {
        "Stream", "MemoryStream", "UnmanagedMemoryStream", "BufferedStream", "SeekOrigin",
        "TextReader", "TextWriter", "StringReader", "StringWriter", "StreamReader", "StreamWriter", "BinaryReader", "BinaryWriter",
        "IOException", "EndOfStreamException", "InvalidDataException",
    };

    private static readonly string[] ForbiddenNamespaces =
    [
        "System.IO.MemoryMappedFiles", "System.IO.Pipes", "System.IO.IsolatedStorage", "System.Net",
        "System.Runtime.InteropServices.JavaScript", "System.Reflection.Emit", "Microsoft.Win32",
    ];

    private static readonly HashSet<string> ForbiddenTypes = new(StringComparer.Ordinal)
    {
        "System.Console", "System.TimeProvider",
        "System.Diagnostics.Stopwatch", "System.Diagnostics.Process",
        "System.Security.Cryptography.RandomNumberGenerator",
        "System.Threading.Thread", "System.Threading.ThreadPool", "System.Threading.Timer", "System.Threading.PeriodicTimer",
        "System.Threading.Tasks.Parallel",
    };

    private static readonly HashSet<(string Type, string Member)> ForbiddenMembers =
    [
        ("System.DateTime", "get_Now"), ("System.DateTime", "get_UtcNow"), ("System.DateTime", "get_Today"),
        ("System.DateTimeOffset", "get_Now"), ("System.DateTimeOffset", "get_UtcNow"),
        ("System.Random", "get_Shared"), ("System.Guid", "NewGuid"), ("System.Guid", "CreateVersion7"),
        ("System.Threading.Tasks.Task", "Run"), ("System.Threading.Tasks.Task", "Delay"),
        ("System.Globalization.CultureInfo", "get_CurrentCulture"),
    ];

    /// <summary>The uses that the engine may not make, a sentence each.</summary>
    public static IEnumerable<string> BrokenBy(CompiledAssembly assembly) =>
        assembly.Uses.Where(Breaks).Select(use => $"{assembly.Name} may not use {use}.").Distinct();

    private static bool Breaks(MemberUse use)
    {
        if (use.Type is "System.Net.WebUtility")
            return false; // Escapes text; no network.

        if (ForbiddenTypes.Contains(use.Type) || ForbiddenNamespaces.Any(name => IsIn(use.Namespace, name)))
            return true;

        if (use.Namespace is "System.IO" && !HarmlessStreams.Contains(use.Type["System.IO.".Length..]))
            return true;

        // A stream reader or writer made from a string opens the file of that name.
        if (use is { Type: "System.IO.StreamReader" or "System.IO.StreamWriter", Member: ".ctor", TakesTextFirst: true })
            return true;

        // The compiler itself asks for the thread's number in iterators; nothing else of the environment is the engine's business.
        if (use is { Type: "System.Environment", Member: not (null or "get_CurrentManagedThreadId") })
            return true;

        if (use is { Type: "System.Random", Member: ".ctor", Parameters: 0 })
            return true;

        return use.Member is not null && ForbiddenMembers.Contains((use.Type, use.Member));
    }

    private static bool IsIn(string space, string parent) =>
        space == parent || space.StartsWith(parent + ".", StringComparison.Ordinal);
}
