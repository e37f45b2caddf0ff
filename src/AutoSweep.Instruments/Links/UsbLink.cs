using AutoSweep.Core;
using AutoSweep.Instruments.Links.Usbtmc;
using AutoSweep.Instruments.Links.Visa;

namespace AutoSweep.Instruments.Links;

/// <summary>Opens USB instruments: through the kernel's device file where there is one, else through VISA.</summary>
internal static class UsbLink
{
    /// <exception cref="BenchFaultException">Neither has it.</exception>
    public static async Task<ILink> OpenAsync(
        UsbResource resource, LinkSettings settings, UsbtmcDevices devices, VisaLibraryNames names, TimeProvider time,
        CancellationToken cancellationToken)
    {
        if (devices.Find(resource) is { } device)
            return UsbtmcLink.Open(resource, device.File, settings, time);
        if (OperatingSystem.IsLinux() && VisaLibrary.Find(names) is null)
            throw NotHere(resource, devices);
        return await VisaLink.OpenAsync(resource, resource.Text, settings, names, time, cancellationToken);
    }

    private static BenchFaultException NotHere(UsbResource resource, UsbtmcDevices devices) => new(
        BenchFault.NotReachable,
        $"no USB instrument \"{resource}\", and no VISA library that could know it. {devices.Words}",
        "an instrument with these numbers that the kernel's usbtmc driver has found",
        "Switch it on, plug it in, set its USB to USBTMC (not to a serial port or a drive); lsusb shows its numbers.");
}
