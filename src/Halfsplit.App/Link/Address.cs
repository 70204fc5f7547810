namespace Halfsplit.App.Link;

/// <summary>
/// Where in the app the person is, as the part of the address behind the hash: the folder itself never changes, so the app
/// works in any folder of any host.
/// </summary>
/// <param name="Screen">start, new, ask, job, so-far, circuit, report, bench, jobs or settings.</param>
public sealed record Address(string Screen, string First = "", string Second = "")
{
    public static Address Start { get; } = new("start");

    public static Address Of(string uri)
    {
        var hash = uri.IndexOf("#/", StringComparison.Ordinal);
        var parts = hash < 0 ? [] : uri[(hash + 2)..].Split('/').Select(Uri.UnescapeDataString).ToArray();
        return parts.Length == 0 || parts[0].Length == 0
            ? Start
            : new Address(parts[0], parts.ElementAtOrDefault(1) ?? "", parts.ElementAtOrDefault(2) ?? "");
    }

    /// <summary>As a link from any screen.</summary>
    public override string ToString()
    {
        var parts = new[] { Screen == "start" ? "" : Screen, First, Second }.Where(p => p.Length > 0).Select(Uri.EscapeDataString);
        return "./#/" + string.Join('/', parts);
    }
}
