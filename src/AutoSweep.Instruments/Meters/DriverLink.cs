using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using AutoSweep.Instruments.Links;

namespace AutoSweep.Instruments.Meters;

/// <summary>How a family's wire behaves.</summary>
public sealed record DriverLink
{
    /// <summary>What ends a message to the meter.</summary>
    /// <value>Default LF (IEEE 488.2, 7.5).</value>
    [Description("What ends a message to the meter. Default LF (IEEE 488.2, 7.5).")]
    public DriverTerminator Terminator { get; init; }

    /// <summary>The last character of a reply.</summary>
    /// <value>Default LF; a CR before it is dropped. CR for a meter that sends only that.</value>
    [Description("The last character of a reply. Default LF; a CR before it is dropped. CR for a meter that sends only that.")]
    public DriverTerminator ReplyTerminator { get; init; }

    /// <summary>How long to wait after opening before the first message, in seconds.</summary>
    /// <value>Default 0. Serial adapters that reset the meter's interface need up to 2.</value>
    [Description("How long to wait after opening, in seconds. Default 0; adapters that reset the meter's interface need up to 2."),
        Range(0, 60)]
    public double OpenSettleSeconds { get; init; }

    /// <summary>The least time between an exchange and the next message, in seconds.</summary>
    /// <value>Default 0. Handheld meters and some LAN ports lose messages that follow too fast.</value>
    [Description("The least time between an exchange and the next message, in seconds. Default 0; handheld meters and some LAN ports lose messages "
        + "that follow too fast."), Range(0, 5)]
    public double PauseSeconds { get; init; }

    /// <summary>How long the meter may take to answer an ordinary query, in seconds.</summary>
    /// <value>Default 2 (VI_ATTR_TMO_VALUE's default, VPP-4.3).</value>
    [Description("How long the meter may take to answer an ordinary query, in seconds. Default 2 ."), Range(0.05, 60)]
    public double QueryTimeoutSeconds { get; init; } = 2;

    /// <summary>The settings of its serial port.</summary>
    [Description("The settings of its serial port.")]
    public SerialSettings Serial { get; init; } = new();

    /// <summary>Commands sent first over a serial line only, such as the one that gives remote control.</summary>
    [Description("Commands sent first over a serial line only, such as the one that gives remote control.")]
    public IReadOnlyList<DriverCommand> SerialSetUp { get; init; } = [];
}
