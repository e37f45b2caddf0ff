using AutoSweep.Core;

namespace AutoSweep.Instruments.Links.Visa;

/// <summary>Opens a session and sets its attributes. Blocks.</summary>
internal static class VisaSession
{
    // VI_INTF_ASRL, and VI_ASRL_END_TERMCHAR (VPP-4.3.2).
    private const int SerialInterface = 4;
    private const nuint EndAtTerminationCharacter = 2;

    /// <exception cref="BenchFaultException">No such instrument, in use, or no answer.</exception>
    public static VisaPort Open(VisaLibrary library, ResourceName resource, string name, LinkSettings settings)
    {
        var visa = library.Functions;
        if (visa.OpenDefaultManager(out var manager) is < 0 and var failed)
            throw NotOpened(library, resource, VisaStatus.Of(failed));
        // A manager of its own for each session: sessions are closed independently, and a manager closes with its last.
        if (visa.Open(manager, name, settings.ConnectTimeout, out var session) is < 0 and var status)
        {
            var description = visa.DescribeStatus(manager, status);
            visa.Close(manager);
            throw NotOpened(library, resource, VisaStatus.Of(status, description));
        }

        var isSerial = visa.Parse(manager, name, out var interfaceType) >= 0 && interfaceType == SerialInterface;
        var isStream = isSerial || name.EndsWith("::SOCKET", StringComparison.OrdinalIgnoreCase);
        if (isStream)
            EndReadsAt(visa, session, settings.ReplyTerminator);
        if (isSerial)
            SetLine(visa, session, settings.Serial);
        return new(visa, manager, session, isStream);
    }

    public static BenchFaultException NotOpened(VisaLibrary library, ResourceName resource, VisaStatus status) => new(
        BenchFault.NotReachable,
        $"\"{resource}\" cannot be opened through VISA ({library.Name}): {status}",
        "an instrument that answers at this name and that no other program holds",
        status.WhatToDo);

    // A stream has no END: without this a read would go on to its time-out.
    private static void EndReadsAt(VisaFunctions visa, uint session, char terminator)
    {
        visa.SetAttribute(session, VisaAttribute.TerminationCharacter, terminator);
        visa.SetAttribute(session, VisaAttribute.TerminationCharacterEnabled, 1);
    }

    private static void SetLine(VisaFunctions visa, uint session, SerialSettings line)
    {
        visa.SetAttribute(session, VisaAttribute.SerialBaud, (nuint)line.Baud);
        visa.SetAttribute(session, VisaAttribute.SerialDataBits, (nuint)line.DataBits);
        visa.SetAttribute(session, VisaAttribute.SerialParity, line.Parity switch { SerialParity.Odd => 1, SerialParity.Even => 2, _ => 0 });
        visa.SetAttribute(session, VisaAttribute.SerialStopBits, (nuint)(10 * line.StopBits));
        visa.SetAttribute(session, VisaAttribute.SerialFlowControl, line.Handshake switch
        {
            SerialHandshake.XonXoff => 1,
            SerialHandshake.RtsCts => 2,
            _ => 0,
        });
        visa.SetAttribute(session, VisaAttribute.SerialEndIn, EndAtTerminationCharacter);
    }
}
