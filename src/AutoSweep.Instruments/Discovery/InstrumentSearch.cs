using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Links.Usbtmc;
using AutoSweep.Instruments.Links.Visa;

namespace AutoSweep.Instruments.Discovery;

/// <summary>Looks for instruments on this computer without sending anything to any of them.</summary>
/// <remarks>A raw socket cannot be found, only known. What a VISA library does to make its list is its own affair; the standard has it send no
/// message (VPP-4.3, 4.3.2).</remarks>
public sealed class InstrumentSearch
{
    // A library that asks the whole network for LXI instruments takes several seconds (bench practice, no source).
    private static readonly TimeSpan LongestListing = TimeSpan.FromSeconds(30);

    /// <summary>Where serial ports are looked for.</summary>
    /// <value>Default: this computer.</value>
    public SerialPortList SerialPorts { get; init; } = SerialPortList.OfThisMachine;

    /// <summary>Where the kernel's USB instruments are looked for.</summary>
    /// <value>Default: this computer.</value>
    public UsbtmcDevices Usb { get; init; } = UsbtmcDevices.OfThisMachine;

    /// <summary>Where a VISA library is looked for.</summary>
    /// <value>Default: under the usual names.</value>
    public VisaLibraryNames Visa { get; init; } = VisaLibraryNames.Usual;

    /// <summary>The clock behind the longest wait for a library's list.</summary>
    /// <value>Default: the machine's.</value>
    public TimeProvider Time { get; init; } = TimeProvider.System;

    /// <summary>Makes the list.</summary>
    /// <param name="cancellationToken">Ends the wait for a VISA library.</param>
    public async Task<FoundResources> FindAsync(CancellationToken cancellationToken)
    {
        var devices = Usb.List();
        var (names, note) = await VisaNamesAsync(cancellationToken);
        return new(
        [
            .. devices.Select(device => new FoundResource(device.Resource, $"USB {device.Description} ({device.File})")),
            .. SerialPorts.List(),
            .. names.Where(name => !IsListed(name, devices)).Select(name => new FoundResource(Usable(name), "through VISA")),
        ], note is null ? [] : [note]);
    }

    private async Task<(IReadOnlyList<string> Names, string? Note)> VisaNamesAsync(CancellationToken cancellationToken)
    {
        if (VisaLibrary.Find(Visa) is not { } library)
            return ([], $"No VISA library on this computer (looked for {string.Join(", ", Visa.Names)}). GPIB, VXI-11 and HiSLIP need one.");
        try
        {
            var names = await Task.Run(library.Resources, CancellationToken.None).WaitAsync(LongestListing, Time, cancellationToken);
            return (names, null);
        }
        catch (BenchFaultException fault)
        {
            return ([], $"No list from VISA: {fault.Found}. {fault.WhatToDo}");
        }
        catch (TimeoutException)
        {
            return ([], FormattableString.Invariant($"The VISA library {library.Name} gave no list within {LongestListing.TotalSeconds} s."));
        }
    }

    // Serial ports and the kernel's USB instruments are listed under the names of our own links.
    private static bool IsListed(string name, IReadOnlyList<UsbtmcDevice> devices) => Parsed(name) switch
    {
        SerialResource => true,
        UsbResource usb => devices.Any(device => device.Is(usb)),
        _ => false,
    };

    // A name of a kind that only the library understands goes to it as it is.
    private static string Usable(string name) => Parsed(name) is null ? $"visa:{name}" : name;

    private static ResourceName? Parsed(string name)
    {
        try
        {
            return ResourceName.Parse(name);
        }
        catch (BenchFaultException)
        {
            return null;
        }
    }
}
