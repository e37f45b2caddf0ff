using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Instruments.Meters;

/// <summary>The limits of a family's error of the AC level. They count for a level curve; a peak needs only ratios.</summary>
public sealed record DriverLevelAccuracy
{
    /// <summary>The limit of the gain error as a share of the reading: 0.0006 for 0.06 %.</summary>
    [Description("The limit of the gain error as a share of the reading: 0.0006 for 0.06 %."), Range(0, 0.2)]
    public required double ShareOfReading { get; init; }

    /// <summary>The limit of the offset as a share of the range: 0.0003 for 0.03 %.</summary>
    [Description("The limit of the offset as a share of the range: 0.0003 for 0.03 %."), Range(0, 0.2)]
    public required double ShareOfRange { get; init; }

    /// <summary>From which share of the range up the two hold: 0.05 for 5 %.</summary>
    [Description("From which share of the range up the two hold: 0.05 for 5 %."), Range(0, 1)]
    public required double HoldsFromShareOfRange { get; init; }

    /// <summary>What is added below that, as a share of the range: 0.001 for 0.1 %.</summary>
    [Description("What is added below that, as a share of the range: 0.001 for 0.1 %."), Range(0, 0.2)]
    public required double BelowAddShareOfRange { get; init; }

    /// <summary>The lowest tone, in hertz, that the limits hold for; of a lower one no uncertainty is stated.</summary>
    /// <value>Default 0: for all tones that the bandwidths pass.</value>
    [Description("The lowest tone, in hertz, that the limits hold for; of a lower one no uncertainty is stated. Default 0: for all that the bandwidths pass."),
        Range(0, 1e6)]
    public double FromToneHertz { get; init; }

    /// <summary>Where that is published.</summary>
    [Description("Where that is published.")]
    public required string Source { get; init; }

    /// <summary>The standard uncertainty of a reading in volts: the limits as a rectangular distribution (GUM 4.3.7).</summary>
    /// <param name="volts">The reading.</param>
    /// <param name="rangeVolts">The range that it was taken in.</param>
    public double StandardUncertaintyVolts(double volts, double rangeVolts)
    {
        var below = volts < HoldsFromShareOfRange * rangeVolts ? BelowAddShareOfRange * rangeVolts : 0;
        return ((ShareOfReading * volts) + (ShareOfRange * rangeVolts) + below) / Math.Sqrt(3);
    }
}
