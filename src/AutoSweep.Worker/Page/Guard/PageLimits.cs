using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.AspNetCore.SignalR;

namespace AutoSweep.Worker.Page.Guard;

/// <summary>How much of anything the page takes.</summary>
/// <remarks>A bench has a few screens; all of it together stays far from what a small computer can bear.</remarks>
public static class PageLimits
{
    /// <summary>The longest request, in bytes; no form of the page comes near.</summary>
    public const int RequestBody = 1024 * 1024;

    /// <summary>The longest message of a screen, in bytes: SignalR's own default. Files that are chosen on a screen come in shorter pieces.</summary>
    public const int ScreenMessage = 32 * 1024;

    /// <summary>Connections at a time.</summary>
    /// <remarks>So many that a thousand that never finish a request leave room for the bench's own; one costs some kilobytes.</remarks>
    public const int Connections = 1500;

    /// <summary>Screens at a time.</summary>
    public const int Screens = 32;

    /// <summary>How long a request's head may take.</summary>
    public static readonly TimeSpan RequestHead = TimeSpan.FromSeconds(10);

    /// <summary>How long a connection may stay without a request.</summary>
    public static readonly TimeSpan IdleConnection = TimeSpan.FromSeconds(30);

    /// <summary>How long a screen that lost its connection finds everything as it was.</summary>
    public static readonly TimeSpan LostScreen = TimeSpan.FromMinutes(3);

    /// <summary>The server's limits.</summary>
    public static void Set(KestrelServerLimits limits)
    {
        limits.MaxRequestBodySize = RequestBody;
        limits.MaxConcurrentConnections = Connections;
        limits.MaxConcurrentUpgradedConnections = Screens;
        limits.RequestHeadersTimeout = RequestHead;
        limits.KeepAliveTimeout = IdleConnection;
        limits.MaxRequestHeaderCount = 60;
        limits.MaxRequestHeadersTotalSize = 16 * 1024;
        limits.MaxRequestLineSize = 4 * 1024;
    }

    /// <summary>The limits of the screens' live connections.</summary>
    public static void Set(HubOptions hub) => hub.MaximumReceiveMessageSize = ScreenMessage;

    /// <summary>What is kept of screens that are away.</summary>
    public static void Set(CircuitOptions circuits)
    {
        circuits.DisconnectedCircuitMaxRetained = 8;
        circuits.DisconnectedCircuitRetentionPeriod = LostScreen;
        circuits.MaxBufferedUnacknowledgedRenderBatches = 10;
    }
}
