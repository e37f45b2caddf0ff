using System.Globalization;

namespace AutoSweep.Instruments.Links.Visa;

/// <summary>What a VISA call can come back with (VPP-4.3.2, appendix A; values from published copies of visa.h), in plain words.</summary>
/// <param name="Code">The number; an error is negative.</param>
/// <param name="Name">The standard's name.</param>
/// <param name="Meaning">What it means, to be put after a colon.</param>
/// <param name="WhatToDo">What the person at the bench can do about it.</param>
public sealed record VisaStatus(int Code, string Name, string Meaning, string WhatToDo)
{
    /// <summary>VI_SUCCESS_TERM_CHAR: the read ended at the termination character.</summary>
    public const int EndedAtTerminationCharacter = 0x3FFF0005;

    /// <summary>VI_SUCCESS_MAX_CNT: the buffer is full, and the message has not ended.</summary>
    public const int BufferFull = 0x3FFF0006;

    /// <summary>VI_ERROR_TMO.</summary>
    public const int TimedOut = unchecked((int)0xBFFF0015);

    /// <summary>VI_ERROR_ABORT: ended by viTerminate.</summary>
    public const int Aborted = unchecked((int)0xBFFF0030);

    /// <summary>VI_ERROR_RSRC_NFOUND.</summary>
    public const int NotFound = unchecked((int)0xBFFF0011);

    private const int SessionGone = unchecked((int)0xBFFF000E);
    private const int TransferFailed = unchecked((int)0xBFFF003E);
    private const int ConnectionLost = unchecked((int)0xBFFF00A6);

    private const string AskTheSetUp = "Look in the VISA library's set-up program whether it sees the instrument, and copy the name from there.";
    private const string CheckCable = "Check the cable and that the instrument is on, then start again: the job goes on where it stopped.";
    private const string CloseOther = "Close the other program, or the lock that it holds.";

    /// <summary>The errors that a bench can meet.</summary>
    public static IReadOnlyList<VisaStatus> Errors { get; } =
    [
        new(unchecked((int)0xBFFF0000), "VI_ERROR_SYSTEM_ERROR",
            "the VISA library itself has failed", "Start the computer anew, then install the library again."),
        new(SessionGone, "VI_ERROR_INV_OBJECT", "the session is no longer open", CheckCable),
        new(unchecked((int)0xBFFF000F), "VI_ERROR_RSRC_LOCKED", "another program has locked the instrument", CloseOther),
        new(NotFound, "VI_ERROR_RSRC_NFOUND",
            "nothing answers at this name", "Switch the instrument on, check its cable and its address. " + AskTheSetUp),
        new(unchecked((int)0xBFFF0012), "VI_ERROR_INV_RSRC_NAME", "the VISA library does not understand this name", AskTheSetUp),
        new(TimedOut, "VI_ERROR_TMO",
            "no answer in time", "Check that the instrument is on, its address, and that it is set to this port."),
        new(Aborted, "VI_ERROR_ABORT", "the call was given up", CheckCable),
        new(TransferFailed, "VI_ERROR_IO", "the transfer failed on its way", CheckCable),
        new(unchecked((int)0xBFFF005F), "VI_ERROR_NLISTENERS",
            "no instrument listens at this GPIB address", "Switch the instrument on and check its address and the GPIB cable."),
        new(unchecked((int)0xBFFF0067), "VI_ERROR_NSUP_OPER", "this kind of resource cannot do that", AskTheSetUp),
        new(unchecked((int)0xBFFF006A), "VI_ERROR_ASRL_PARITY",
            "a character with a wrong parity bit", "Check baud rate, parity and the cable."),
        new(unchecked((int)0xBFFF006B), "VI_ERROR_ASRL_FRAMING",
            "a character without its stop bit", "Check baud rate, stop bits and the cable."),
        new(unchecked((int)0xBFFF006C), "VI_ERROR_ASRL_OVERRUN",
            "characters came faster than they were taken", "Lower the baud rate or use the handshake."),
        new(unchecked((int)0xBFFF0072), "VI_ERROR_RSRC_BUSY", "another program has the instrument open", CloseOther),
        new(unchecked((int)0xBFFF009E), "VI_ERROR_LIBRARY_NFOUND",
            "the VISA library lacks the part for this kind of interface",
            "Install that part (the GPIB adapter's driver, for GPIB) with the library's set-up program."),
        new(unchecked((int)0xBFFF00A5), "VI_ERROR_INTF_NUM_NCONFIG",
            "no interface has this number", "Check the number after GPIB, USB or TCPIP in the name; 0 is the first. " + AskTheSetUp),
        new(ConnectionLost, "VI_ERROR_CONN_LOST", "the connection was lost", CheckCable),
        new(unchecked((int)0xBFFF00A7), "VI_ERROR_MACHINE_NAVAIL",
            "the other computer does not answer", "Check the network and the other computer's VISA server."),
        new(unchecked((int)0xBFFF00A8), "VI_ERROR_NPERMISSION",
            "this user may not open it", "Get the right to use the interface; on Linux that is usually a group or a udev rule."),
    ];

    /// <summary>What a code means.</summary>
    /// <param name="code">What a call came back with.</param>
    /// <param name="description">The library's own words for a code that is not in the list.</param>
    public static VisaStatus Of(int code, string description = "")
    {
        if (Errors.FirstOrDefault(error => error.Code == code) is { } known)
            return known;
        var number = string.Create(CultureInfo.InvariantCulture, $"0x{code:X8}");
        return new(code, number, description.Length > 0 ? description : "a fault that only the VISA library knows", AskTheSetUp);
    }

    /// <summary>Whether a code means that the link is gone, whatever the call was for.</summary>
    public static bool IsLost(int code) => code is SessionGone or TransferFailed or ConnectionLost;

    /// <summary>The meaning with the standard's name.</summary>
    public override string ToString() => $"{Meaning} ({Name})";
}
