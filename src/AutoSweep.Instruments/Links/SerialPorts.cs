using System.IO.Ports;
using AutoSweep.Core;

namespace AutoSweep.Instruments.Links;

/// <summary>The serial ports of this machine: opening and what to say when one is not there.</summary>
internal static class SerialPorts
{
    public static SerialPort New(string name, SerialSettings settings) => new(name)
    {
        BaudRate = settings.Baud,
        DataBits = settings.DataBits,
        Parity = settings.Parity switch
        {
            SerialParity.Odd => Parity.Odd,
            SerialParity.Even => Parity.Even,
            _ => Parity.None,
        },
        StopBits = settings.StopBits == 2 ? StopBits.Two : StopBits.One,
        Handshake = settings.Handshake switch
        {
            SerialHandshake.XonXoff => Handshake.XOnXOff,
            SerialHandshake.RtsCts => Handshake.RequestToSend,
            _ => Handshake.None,
        },
    };

    /// <summary>Raises DTR and RTS: many USB instruments send nothing without DTR, and meters with DTR/DSR handshake wait for it.</summary>
    public static void SayReady(SerialPort port)
    {
        try
        {
            port.DtrEnable = true;
            if (port.Handshake != Handshake.RequestToSend)
                port.RtsEnable = true;
        }
        catch (IOException)
        {
            // A pty has no such lines.
        }
    }

    public static bool IsGone(string name) => name.StartsWith('/') && !File.Exists(name);

    public static BenchFaultException NotReachable(SerialResource resource, Exception cause) =>
        cause is UnauthorizedAccessException && !IsGone(resource.Port)
            ? new(
                BenchFault.NotReachable,
                $"the serial port {resource.Port}, which cannot be opened: {cause.Message}",
                "a serial port that no other program has open and that you may use",
                "Close the other program; on Linux, check that you are in the port's group (often dialout).",
                cause)
            : new(
                BenchFault.NotReachable,
                $"no serial port {resource.Port} that can be opened. {(IsGone(resource.Port) ? "" : cause.Message)} {Existing()}",
                "a serial port that exists",
                "Plug the instrument's cable in, or name one of the ports that exist.",
                cause);

    private static string Existing()
    {
        var names = SerialPort.GetPortNames().Order(StringComparer.Ordinal).ToArray();
        return names.Length == 0 ? "This machine has no serial ports." : $"Ports here: {string.Join(", ", names)}.";
    }
}
