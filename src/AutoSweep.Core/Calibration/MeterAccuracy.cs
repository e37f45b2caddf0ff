namespace AutoSweep.Core.Calibration;

/// <summary>A capacitance meter's stated accuracy: the limits of an error that all readings share.</summary>
/// <remarks>
/// It does not average down. Its distribution inside the limits is not known, so that it counts as rectangular: the standard uncertainty
/// is the limit over √3 (JCGM 100:2008, 4.3.7).
/// </remarks>
/// <param name="ShareOfReading">The limit of the gain error, such as 0.0005 for 0.05 %.</param>
/// <param name="OffsetPicofarads">The limit of what the leads' correction leaves, in picofarads.</param>
public sealed record MeterAccuracy(double ShareOfReading, double OffsetPicofarads)
{
    /// <summary>The standard uncertainty of the gain, as a share of the reading.</summary>
    public double GainStandardUncertainty => ShareOfReading / Math.Sqrt(3);

    /// <summary>The standard uncertainty of the offset, in picofarads.</summary>
    public double OffsetStandardUncertainty => OffsetPicofarads / Math.Sqrt(3);
}
