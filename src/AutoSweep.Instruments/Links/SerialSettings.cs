using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;

namespace AutoSweep.Instruments.Links;

/// <summary>The settings of a serial line.</summary>
public sealed record SerialSettings
{
    /// <summary>Bits a second; one of the standard rates.</summary>
    /// <value>Default 9600, the default of VI_ATTR_ASRL_BAUD (VPP-4.3).</value>
    [Description("Bits a second; one of the standard rates. Default 9600, the default of VI_ATTR_ASRL_BAUD (VPP-4.3)."), Range(300, 921600)]
    public int Baud { get; init; } = 9600;

    /// <summary>Data bits a character, 7 or 8.</summary>
    /// <value>Default 8.</value>
    [Description("Data bits a character, 7 or 8. Default 8."), Range(7, 8)]
    public int DataBits { get; init; } = 8;

    /// <summary>The parity bit.</summary>
    /// <value>Default none.</value>
    [Description("The parity bit. Default none.")]
    public SerialParity Parity { get; init; }

    /// <summary>Stop bits, 1 or 2.</summary>
    /// <value>Default 1.</value>
    [Description("Stop bits, 1 or 2. Default 1."), Range(1, 2)]
    public int StopBits { get; init; } = 1;

    /// <summary>The handshake.</summary>
    /// <value>Default none.</value>
    [Description("The handshake. Default none.")]
    public SerialHandshake Handshake { get; init; }

    /// <summary>The fixture's line: 115200 baud, 8N1, no handshake (docs/fixture-protocol.md).</summary>
    [JsonIgnore]
    public static SerialSettings Fixture { get; } = new() { Baud = 115200 };
}
