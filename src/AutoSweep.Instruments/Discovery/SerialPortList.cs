using System.Globalization;
using System.IO.Ports;

namespace AutoSweep.Instruments.Discovery;

/// <summary>The serial ports of a computer.</summary>
/// <param name="Names">Gives the system's names of them, such as <c>COM3</c> or <c>/dev/ttyUSB0</c>.</param>
/// <param name="StableFolder">Where Linux (udev) keeps links to them that do not change from plug to plug.</param>
public sealed record SerialPortList(Func<IReadOnlyList<string>> Names, string StableFolder)
{
    /// <summary>Those of this computer.</summary>
    public static SerialPortList OfThisMachine { get; } = new(SerialPort.GetPortNames, "/dev/serial/by-id");

    /// <summary>All of them, under the name that finds them again, without opening any.</summary>
    public IReadOnlyList<FoundResource> List()
    {
        var stable = StableNames();
        return
        [
            .. Names().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
                .Select(port => new FoundResource(ResourceOf(stable.GetValueOrDefault(port, port)), $"serial port {port}")),
        ];
    }

    // VISA numbers a Windows port as the system does (VPP-4.3, 4.3).
    private static string ResourceOf(string port) =>
        port.StartsWith("COM", StringComparison.Ordinal) && int.TryParse(port[3..], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? FormattableString.Invariant($"ASRL{number}::INSTR")
            : $"ASRL{port}::INSTR";

    private Dictionary<string, string> StableNames()
    {
        Dictionary<string, string> names = [];
        if (!Directory.Exists(StableFolder))
            return names;
        foreach (var link in Directory.EnumerateFiles(StableFolder).Order(StringComparer.Ordinal))
        {
            if (File.ResolveLinkTarget(link, returnFinalTarget: true) is { } port)
                names.TryAdd(port.FullName, link);
        }

        return names;
    }
}
