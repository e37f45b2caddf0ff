using System.Runtime.InteropServices;
using AutoSweep.Core;

namespace AutoSweep.Instruments.Links.Visa;

/// <summary>The VISA library that is installed, found when it is first needed.</summary>
public sealed class VisaLibrary
{
    // Resources are those of instruments; sockets are listed only where somebody has entered them in the library's set-up program.
    private const string Everything = "?*";

    private VisaLibrary(string name, VisaFunctions functions) => (Name, Functions) = (name, functions);

    /// <summary>The name under which it was found.</summary>
    public string Name { get; }

    /// <summary>Its functions.</summary>
    internal VisaFunctions Functions { get; }

    /// <summary>Finds the library. It stays loaded until the program ends.</summary>
    /// <returns>Null when none of the names is a VISA library for this kind of processor.</returns>
    public static VisaLibrary? Find(VisaLibraryNames names)
    {
        foreach (var name in names.Names)
        {
            if (!NativeLibrary.TryLoad(name, out var handle))
                continue;
            try
            {
                return new(name, new(handle));
            }
            catch (EntryPointNotFoundException)
            {
                // Another library of that name.
                NativeLibrary.Free(handle);
            }
        }

        return null;
    }

    /// <summary>Finds the library that a resource needs.</summary>
    /// <exception cref="BenchFaultException">There is none: names those that were tried, and what to do or use instead.</exception>
    public static VisaLibrary Need(VisaLibraryNames names, ResourceName resource) => Find(names) ?? throw new BenchFaultException(
        BenchFault.NotReachable,
        $"no VISA library on this computer, which \"{resource}\" needs. Looked for: {string.Join(", ", names.Names)}",
        "a VISA library for this system and this kind of processor, or a resource that needs none",
        "Use the instrument's LAN socket (TCPIP::host::port::SOCKET, usually port 5025) or its serial port (ASRL...::INSTR); on Linux a USB "
        + "instrument needs none. Or install a VISA library, those of the GPIB adapter's or the meter's maker do; one in an unusual place is "
        + $"named by the environment variable {VisaLibraryNames.Variable}.");

    /// <summary>The names of the resources that the library knows of. Sends nothing to any instrument, as far as the library keeps to the
    /// standard.</summary>
    /// <exception cref="BenchFaultException">The library fails.</exception>
    public IReadOnlyList<string> Resources()
    {
        Check(Functions.OpenDefaultManager(out var manager));
        try
        {
            return Resources(manager);
        }
        finally
        {
            Functions.Close(manager);
        }
    }

    private List<string> Resources(uint manager)
    {
        var status = Functions.Find(manager, Everything, out var list, out var count, out var name);
        if (status == VisaStatus.NotFound)
            return [];
        Check(status);
        List<string> names = [name];
        while (names.Count < count && Functions.FindNext(list, out name) >= 0)
            names.Add(name);
        Functions.Close(list);
        return names;
    }

    private void Check(int code)
    {
        if (code >= 0)
            return;
        var status = VisaStatus.Of(code);
        throw new BenchFaultException(BenchFault.NotReachable, $"the VISA library {Name}: {status}", "a list of its resources", status.WhatToDo);
    }
}
