using System.Net;
using AutoSweep.Worker.Page.Work;

namespace AutoSweep.Worker.Page;

/// <summary>How the bench page is served.</summary>
public sealed record BenchPageOptions
{
    /// <summary>The port where none is named; of the range that IANA leaves to everybody (RFC 6335, 6: 49152 to 65535).</summary>
    public const int DefaultPort = 52440;

    /// <summary>The address that is listened on.</summary>
    /// <value>Default loopback: nobody but this computer.</value>
    public IPAddress Address { get; init; } = IPAddress.Loopback;

    /// <summary>The port; 0 for any free one.</summary>
    public int Port { get; init; } = DefaultPort;

    /// <summary>Where things are.</summary>
    public DeskOptions Desk { get; init; } = new();

    /// <summary>Whether screens elsewhere need the token.</summary>
    public bool NeedsToken => !IPAddress.IsLoopback(Address);
}
