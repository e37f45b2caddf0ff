using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Instruments.Meters;

/// <summary>The limits of a family's error, which all readings of one meter share.</summary>
public sealed record DriverCapacitanceAccuracy
{
    /// <summary>The limit of the gain error as a share of the reading: 0.0005 for 0.05 %.</summary>
    [Description("The limit of the gain error as a share of the reading: 0.0005 for 0.05 %."), Range(0, 0.2)]
    public required double ShareOfReading { get; init; }

    /// <summary>What remains after the open correction, in picofarads.</summary>
    [Description("What remains after the open correction, in picofarads."), Range(0, 1e4)]
    public required double OffsetPicofarads { get; init; }

    /// <summary>Where that is published.</summary>
    [Description("Where that is published.")]
    public required string Source { get; init; }
}
