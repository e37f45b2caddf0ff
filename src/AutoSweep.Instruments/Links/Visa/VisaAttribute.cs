namespace AutoSweep.Instruments.Links.Visa;

/// <summary>Attributes of a VISA session (VPP-4.3.2, appendix A; values from published copies of visa.h).</summary>
internal enum VisaAttribute : uint
{
    /// <summary>VI_ATTR_TMO_VALUE: how long a call may take, in milliseconds.</summary>
    Timeout = 0x3FFF001A,

    /// <summary>VI_ATTR_TERMCHAR: the character at which a read ends.</summary>
    TerminationCharacter = 0x3FFF0018,

    /// <summary>VI_ATTR_TERMCHAR_EN: whether it does.</summary>
    TerminationCharacterEnabled = 0x3FFF0038,

    /// <summary>VI_ATTR_ASRL_BAUD.</summary>
    SerialBaud = 0x3FFF0021,

    /// <summary>VI_ATTR_ASRL_DATA_BITS, 5 to 8.</summary>
    SerialDataBits = 0x3FFF0022,

    /// <summary>VI_ATTR_ASRL_PARITY: 0 none, 1 odd, 2 even.</summary>
    SerialParity = 0x3FFF0023,

    /// <summary>VI_ATTR_ASRL_STOP_BITS, in tenths of a bit.</summary>
    SerialStopBits = 0x3FFF0024,

    /// <summary>VI_ATTR_ASRL_FLOW_CNTRL: 0 none, 1 XON/XOFF, 2 RTS/CTS.</summary>
    SerialFlowControl = 0x3FFF0025,

    /// <summary>VI_ATTR_ASRL_END_IN: what ends a read; 2 the termination character.</summary>
    SerialEndIn = 0x3FFF00B3,
}
