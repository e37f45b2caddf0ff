using AutoSweep.Core;

namespace AutoSweep.Instruments.Links;

/// <summary>Opens the link that a resource name asks for. The type of the name is the key: a new kind of link is one
/// registration.</summary>
public sealed class LinkOpener
{
    private readonly Dictionary<Type, Func<ResourceName, LinkSettings, CancellationToken, Task<ILink>>> _openers = [];

    /// <summary>An opener that knows raw TCP sockets and serial lines.</summary>
    /// <param name="time">The clock behind the connection's time-out.</param>
    public LinkOpener(TimeProvider time)
    {
        Register<SocketResource>((resource, settings, cancel) => TcpLink.OpenAsync(resource, settings, time, cancel));
        Register<SerialResource>((resource, settings, _) => Task.FromResult<ILink>(SerialLink.Open(resource, settings.Serial)));
    }

    /// <summary>Teaches this opener a kind of resource, or replaces what it knew.</summary>
    public void Register<TResource>(Func<TResource, LinkSettings, CancellationToken, Task<ILink>> open)
        where TResource : ResourceName =>
        _openers[typeof(TResource)] = (resource, settings, cancel) => open((TResource)resource, settings, cancel);

    /// <summary>Opens a link.</summary>
    /// <exception cref="BenchFaultException">Nothing there, it is in use, or this kind of link is not built in yet.</exception>
    public Task<ILink> OpenAsync(ResourceName resource, LinkSettings settings, CancellationToken cancellationToken) =>
        _openers.TryGetValue(resource.GetType(), out var open)
            ? open(resource, settings, cancellationToken)
            : throw NotBuiltIn(resource);

    private static BenchFaultException NotBuiltIn(ResourceName resource) => new(
        BenchFault.NotReachable,
        $"the resource \"{resource}\", which needs a {KindOf(resource)} link; that is not built in yet",
        "a raw TCP socket (TCPIP::host::port::SOCKET) or a serial line (ASRL/dev/ttyUSB0::INSTR)",
        "Use the meter's LAN socket (usually port 5025) or its serial port.");

    private static string KindOf(ResourceName resource) => resource switch
    {
        UsbResource => "USBTMC",
        GpibResource => "GPIB",
        LanInstrumentResource { Device: var device } when device.StartsWith("hislip", StringComparison.OrdinalIgnoreCase) => "HiSLIP",
        LanInstrumentResource => "VXI-11",
        _ => resource.GetType().Name,
    };
}
