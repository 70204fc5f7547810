using System.Net;

namespace Halfsplit.Server;

/// <summary>What names this machine and no other.</summary>
internal static class Loopback
{
    /// <summary>True for an address to listen on that no other machine can reach.</summary>
    public static bool IsAddress(string address) => Uri.TryCreate(address, UriKind.Absolute, out var uri) && IsHost(uri.Host);

    public static bool IsHost(string host) => host == "localhost"
        || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));
}
