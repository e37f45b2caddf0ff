using AutoSweep.Core;
using AutoSweep.Instruments.Links.Usbtmc;
using AutoSweep.Instruments.Links.Visa;

namespace AutoSweep.Instruments.Links;

/// <summary>Opens the link that a resource name asks for. The type of the name is the key: a new kind of link is one
/// registration.</summary>
public sealed class LinkOpener
{
    private readonly Dictionary<Type, Func<ResourceName, LinkSettings, CancellationToken, Task<ILink>>> _openers = [];

    /// <summary>An opener that knows sockets and serial lines, USBTMC through the Linux kernel, and VISA where a library is
    /// installed.</summary>
    /// <param name="time">The clock behind the time-outs.</param>
    /// <param name="visa">Where the VISA library is looked for. Null: under the usual names.</param>
    /// <param name="usb">Where the kernel's USB instruments are looked for. Null: on this machine.</param>
    public LinkOpener(TimeProvider time, VisaLibraryNames? visa = null, UsbtmcDevices? usb = null)
    {
        var (names, devices) = (visa ?? VisaLibraryNames.Usual, usb ?? UsbtmcDevices.OfThisMachine);
        Register<SocketResource>((resource, settings, cancel) => TcpLink.OpenAsync(resource, settings, time, cancel));
        Register<SerialResource>((resource, settings, _) => Task.FromResult<ILink>(SerialLink.Open(resource, settings.Serial)));
        Register<UsbtmcFileResource>((resource, settings, _) =>
            Task.FromResult<ILink>(UsbtmcLink.Open(resource, resource.Path, settings, time)));
        Register<UsbResource>((resource, settings, cancel) => UsbLink.OpenAsync(resource, settings, devices, names, time, cancel));
        Register<GpibResource>((resource, settings, cancel) => VisaLink.OpenAsync(resource, resource.Text, settings, names, time, cancel));
        Register<LanInstrumentResource>((resource, settings, cancel) =>
            VisaLink.OpenAsync(resource, resource.Text, settings, names, time, cancel));
        Register<VisaResource>((resource, settings, cancel) => VisaLink.OpenAsync(resource, resource.Name, settings, names, time, cancel));
    }

    /// <summary>Teaches this opener a kind of resource, or replaces what it knew.</summary>
    public void Register<TResource>(Func<TResource, LinkSettings, CancellationToken, Task<ILink>> open)
        where TResource : ResourceName =>
        _openers[typeof(TResource)] = (resource, settings, cancel) => open((TResource)resource, settings, cancel);

    /// <summary>Opens a link.</summary>
    /// <exception cref="BenchFaultException">Nothing there, it is in use, or what it needs is not installed.</exception>
    public Task<ILink> OpenAsync(ResourceName resource, LinkSettings settings, CancellationToken cancellationToken) =>
        _openers.TryGetValue(resource.GetType(), out var open)
            ? open(resource, settings, cancellationToken)
            : throw NotBuiltIn(resource);

    private static BenchFaultException NotBuiltIn(ResourceName resource) => new(
        BenchFault.NotReachable,
        $"the resource \"{resource}\", for which no link is registered",
        "a resource of a kind that is",
        "Register the kind of link, or use another port of the instrument.");
}
