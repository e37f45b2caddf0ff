using System.Net;
using Microsoft.AspNetCore.Http;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>The names under which this page may be asked for.</summary>
/// <remarks>A page elsewhere can let its own name point to this computer's address (DNS rebinding) and would then be of one origin with the bench
/// page; but the browser still sends that name in Host (RFC 9110, 7.2), and it is not one of these.</remarks>
public static class TrustedHosts
{
    // RFC 9110, 4.2.1: the port of http where none is written.
    private const int HttpPort = 80;

    /// <summary>The names, for a message.</summary>
    /// <param name="options">How the page is served.</param>
    public static string Words(BenchPageOptions options) =>
        options.NeedsToken
            ? $"this computer's address, or its name {Environment.MachineName}, with the page's port"
            : "127.0.0.1 or localhost, with the page's port";

    /// <summary>Whether a request names this page.</summary>
    /// <param name="host">Host, as it came.</param>
    /// <param name="local">The address of this computer at which the connection arrived.</param>
    /// <param name="port">The port at which it arrived.</param>
    /// <param name="options">How the page is served.</param>
    public static bool Know(HostString host, IPAddress local, int port, BenchPageOptions options)
    {
        if (!host.HasValue || (host.Port ?? HttpPort) != port)
            return false;
        var arrived = local.IsIPv4MappedToIPv6 ? local.MapToIPv4() : local;
        if (IPAddress.TryParse(host.Host, out var address))
            return address.Equals(arrived) || (IPAddress.IsLoopback(address) && IPAddress.IsLoopback(arrived));
        return IPAddress.IsLoopback(arrived) && Is(host.Host, "localhost")
            || options.NeedsToken && (Is(host.Host, Environment.MachineName) || Is(host.Host, Environment.MachineName + ".local"));
    }

    private static bool Is(string name, string known) => string.Equals(name, known, StringComparison.OrdinalIgnoreCase);
}
