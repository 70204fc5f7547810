using System.Diagnostics;
using System.Globalization;

namespace Halfsplit.Architecture.Tests;

/// <summary>Does what the engine may not, so that the rule can be seen to find it in compiled code. Never run.</summary>
internal static class Offender
{
    public static string Touch(string path, Stream stream)
    {
        Console.WriteLine(File.ReadAllText(path));
        using var file = new FileStream(path, FileMode.Open);
        using var fromPath = new StreamReader(path);
        using var fromStream = new StreamReader(stream);
        using var network = new HttpClient();
        Thread.Sleep(1);
        return string.Create(CultureInfo.CurrentCulture, $"""
            {DateTime.UtcNow} {Stopwatch.GetTimestamp()} {new Random().Next()} {Random.Shared.Next()}
            {Guid.NewGuid()} {Environment.MachineName}
            """);
    }
}
