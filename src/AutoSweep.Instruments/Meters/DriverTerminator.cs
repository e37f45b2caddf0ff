using System.Text.Json.Serialization;

namespace AutoSweep.Instruments.Meters;

/// <summary>What ends a line.</summary>
public enum DriverTerminator
{
    /// <summary>Line feed.</summary>
    [JsonStringEnumMemberName("lf")]
    Lf,

    /// <summary>Carriage return, line feed.</summary>
    [JsonStringEnumMemberName("crlf")]
    CrLf,

    /// <summary>Carriage return.</summary>
    [JsonStringEnumMemberName("cr")]
    Cr,
}
