using System.Globalization;

namespace AutoSweep.Instruments.Links.Usbtmc;

/// <summary>The USBTMC instruments that the Linux kernel has found.</summary>
/// <param name="ClassFolder">The kernel's list: a link for each device file, and behind it the USB interface's and the device's
/// attributes.</param>
/// <param name="DeviceFolder">Where the device files are.</param>
public sealed record UsbtmcDevices(string ClassFolder, string DeviceFolder)
{
    /// <summary>Those of this machine: <c>/sys/class/usbmisc</c> (kernel, Documentation/ABI, sysfs-class-usbmisc) and <c>/dev</c>. Empty
    /// where there is no Linux kernel.</summary>
    public static UsbtmcDevices OfThisMachine { get; } = new("/sys/class/usbmisc", "/dev");

    /// <summary>All of them, by their device file's name.</summary>
    public IReadOnlyList<UsbtmcDevice> List() => !Directory.Exists(ClassFolder)
        ? []
        : [.. Directory.EnumerateFileSystemEntries(ClassFolder, "usbtmc*").Order(StringComparer.Ordinal).Select(Read).OfType<UsbtmcDevice>()];

    /// <summary>The one that a resource name means; null when it is not there.</summary>
    public UsbtmcDevice? Find(UsbResource resource) => List().FirstOrDefault(device => device.Is(resource));

    /// <summary>What is there, for messages.</summary>
    public string Words => List() is { Count: > 0 } devices
        ? $"USB instruments here: {string.Join(", ", devices.Select(device => $"{device.Resource} ({device.File})"))}."
        : "The system has found no USB instrument.";

    // Links are followed one by one: .NET resolves ".." in a path by its text, the kernel's tree means the links' targets.
    private UsbtmcDevice? Read(string entry)
    {
        var node = Target(entry);
        var usbInterface = Target(Path.Combine(node, "device"));
        var device = Path.GetDirectoryName(usbInterface) ?? "";
        if (Number(device, "idVendor") is not { } vendor || Number(device, "idProduct") is not { } product)
            return null;
        var description = $"{Text(device, "manufacturer")} {Text(device, "product")}".Trim();
        return new(Path.Combine(DeviceFolder, Path.GetFileName(entry)), vendor, product, Text(device, "serial"), description);
    }

    private static string Target(string path) =>
        new DirectoryInfo(path).ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? path;

    private static int? Number(string folder, string attribute) =>
        ushort.TryParse(Text(folder, attribute), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static string Text(string folder, string attribute)
    {
        try
        {
            return File.ReadAllText(Path.Combine(folder, attribute)).Trim();
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // An instrument need not have a serial number, and may be unplugged while it is read.
            return "";
        }
    }
}
