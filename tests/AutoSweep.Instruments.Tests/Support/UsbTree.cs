using AutoSweep.Instruments.Links.Usbtmc;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A tree of links and attributes as the Linux kernel lays it out below /sys for USBTMC instruments, in a temporary
/// folder.</summary>
public sealed class UsbTree : IDisposable
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("autosweep-usb-");

    public UsbTree()
    {
        Directory.CreateDirectory(At("sys/class/usbmisc"));
        Directory.CreateDirectory(At("dev"));
    }

    public UsbtmcDevices Devices => new(At("sys/class/usbmisc"), At("dev"));

    /// <summary>An instrument; its device file is a link to something that stands in for it.</summary>
    public void Plug(int number, string vendor, string product, string? serial, string? file = null)
    {
        var name = FormattableString.Invariant($"usbtmc{number}");
        var usb = FormattableString.Invariant($"sys/devices/pci0000:00/0000:00:14.0/usb1/1-{number + 1}");
        var node = FormattableString.Invariant($"{usb}/1-{number + 1}:1.0/usbmisc/{name}");
        Directory.CreateDirectory(At(node));
        File.WriteAllText(At($"{usb}/idVendor"), vendor + "\n");
        File.WriteAllText(At($"{usb}/idProduct"), product + "\n");
        File.WriteAllText(At($"{usb}/manufacturer"), "Invented Instruments\n");
        File.WriteAllText(At($"{usb}/product"), "M1\n");
        if (serial is not null)
            File.WriteAllText(At($"{usb}/serial"), serial + "\n");
        Directory.CreateSymbolicLink(At($"{node}/device"), FormattableString.Invariant($"../../../1-{number + 1}:1.0"));
        Directory.CreateSymbolicLink(At($"sys/class/usbmisc/{name}"), $"../../../{node}");
        if (file is not null)
            File.CreateSymbolicLink(At($"dev/{name}"), file);
    }

    public string At(string path) => Path.Combine(_root.FullName, path);

    public void Dispose() => _root.Delete(recursive: true);
}
