using System.Globalization;
using AutoSweep.Core;

namespace AutoSweep.Instruments.Links;

/// <summary>The grammar of resource names: VPP-4.3, section 4.3, table 4.3.1, a prefix, and four shorthands.</summary>
internal static class ResourceNameGrammar
{
    private const string VisaPrefix = "visa:";
    private const string UsbtmcFile = "/dev/usbtmc";
    private const string Known = "a VISA resource name, such as TCPIP::192.168.1.20::5025::SOCKET or ASRL/dev/ttyUSB0::INSTR";

    public static ResourceName Parse(string text)
    {
        var trimmed = text.Trim();
        if (trimmed.StartsWith(VisaPrefix, StringComparison.OrdinalIgnoreCase) && trimmed.Length > VisaPrefix.Length)
            return new VisaResource(trimmed, trimmed[VisaPrefix.Length..]);
        var parts = trimmed.Split("::");
        if (parts.Length == 1 && Shorthand(trimmed) is { } shorthand)
            return shorthand;
        return Interface(parts[0]) switch
        {
            ("TCPIP", var board) when Number(board, 0, 65535) is not null => Tcpip(trimmed, parts),
            ("ASRL", var port) => Serial(trimmed, port, parts),
            ("USB", var board) when Number(board, 0, 65535) is not null => Usb(trimmed, parts),
            ("GPIB", var board) when Number(board, 0, 65535) is { } number => Gpib(trimmed, number, parts),
            _ => throw Malformed(trimmed, Known, "Correct the name of the instrument's resource."),
        };
    }

    private static (string Keyword, string Remainder) Interface(string first)
    {
        foreach (var keyword in (string[])["TCPIP", "ASRL", "USB", "GPIB"])
        {
            if (first.StartsWith(keyword, StringComparison.OrdinalIgnoreCase))
                return (keyword, first[keyword.Length..]);
        }

        return ("", first);
    }

    private static ResourceName? Shorthand(string text)
    {
        if (text.StartsWith(UsbtmcFile, StringComparison.Ordinal))
            return new UsbtmcFileResource(text, text);
        if (text.StartsWith("/dev/", StringComparison.Ordinal) || IsComPort(text))
            return new SerialResource(text, text);
        var colon = text.LastIndexOf(':');
        return colon > 0 && text.IndexOf(':', StringComparison.Ordinal) == colon && Number(text[(colon + 1)..], 1, 65535) is { } port
            ? new SocketResource(text, text[..colon], port)
            : null;
    }

    private static bool IsComPort(string text) =>
        text.StartsWith("COM", StringComparison.OrdinalIgnoreCase) && text.Length > 3 && Number(text[3..], 1, 9999) is not null;

    private static ResourceName Tcpip(string text, string[] parts)
    {
        var host = parts.Length > 1 ? parts[1] : "";
        if (host.Length == 0)
            throw Malformed(text, "a host name or address after TCPIP::", "Write it as TCPIP::192.168.1.20::5025::SOCKET.");
        if (!Is(parts[^1], "SOCKET"))
            return new LanInstrumentResource(text, host, Device(text, parts));
        return parts.Length == 4 && Number(parts[2], 1, 65535) is { } port
            ? new SocketResource(text, host, port)
            : throw Malformed(text, "TCPIP::host::port::SOCKET with a port from 1 to 65535",
                "Look the port up in the meter's manual; 5025 is the usual one.");
    }

    private static string Device(string text, string[] parts)
    {
        var middle = parts[2..(Is(parts[^1], "INSTR") ? ^1 : ^0)];
        return middle.Length switch
        {
            0 => "inst0",
            1 when middle[0].Length > 0 => middle[0],
            _ => throw Malformed(text, "TCPIP::host::device::INSTR", "For a raw socket end the name with the port and ::SOCKET."),
        };
    }

    private static SerialResource Serial(string text, string port, string[] parts)
    {
        if (port.Length == 0 || parts.Length > 2 || (parts.Length == 2 && !Is(parts[1], "INSTR")))
            throw Malformed(text, "ASRL, the port, ::INSTR", "Write it as ASRL3::INSTR, ASRLCOM3::INSTR or ASRL/dev/ttyUSB0::INSTR.");
        return new(text, Number(port, 1, 9999) is { } number ? NumberedPort(number) : port);
    }

    // VISA numbers the ports from 1; Linux numbers its built-in ones from ttyS0.
    private static string NumberedPort(int number) => OperatingSystem.IsWindows()
        ? string.Create(CultureInfo.InvariantCulture, $"COM{number}")
        : string.Create(CultureInfo.InvariantCulture, $"/dev/ttyS{number - 1}");

    private static UsbResource Usb(string text, string[] parts)
    {
        var fields = Is(parts[^1], "INSTR") ? parts[..^1] : parts;
        return fields.Length is 4 or 5 && UsbNumber(fields[1]) is { } vendor && UsbNumber(fields[2]) is { } product && fields[3].Length > 0
            ? new(text, vendor, product, fields[3])
            : throw Malformed(text, "USB::vendor::product::serial::INSTR, as in USB::0x1234::0x5678::A001::INSTR",
                "Look the numbers up with lsusb.");
    }

    private static GpibResource Gpib(string text, int board, string[] parts)
    {
        var fields = Is(parts[^1], "INSTR") ? parts[..^1] : parts;
        return fields.Length is 2 or 3 && Number(fields[1], 0, 30) is { } primary && fields[1].Length > 0
            ? new(text, board, primary)
            : throw Malformed(text, "GPIB::address::INSTR with an address from 0 to 30", "Look the address up in the meter's menu.");
    }

    private static int? UsbNumber(string text) => text.StartsWith("0x", StringComparison.OrdinalIgnoreCase)
        ? ushort.TryParse(text[2..], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var hex) ? hex : null
        : text.Length > 0 ? Number(text, 0, 65535) : null;

    // A board number that is left out is 0.
    private static int? Number(string text, int lowest, int highest) => text.Length == 0 && lowest == 0
        ? 0
        : int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= lowest && number <= highest
            ? number
            : null;

    private static bool Is(string part, string keyword) => part.Equals(keyword, StringComparison.OrdinalIgnoreCase);

    private static BenchFaultException Malformed(string text, string expected, string whatToDo) =>
        new(BenchFault.NotReachable, $"the resource name \"{text}\"", expected, whatToDo);
}
