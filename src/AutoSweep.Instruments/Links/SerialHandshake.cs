namespace AutoSweep.Instruments.Links;

/// <summary>How a serial line holds the sender back.</summary>
public enum SerialHandshake
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>The characters XON and XOFF.</summary>
    XonXoff,

    /// <summary>The lines RTS and CTS.</summary>
    RtsCts,
}
