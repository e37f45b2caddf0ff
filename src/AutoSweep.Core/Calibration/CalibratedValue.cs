using MathNet.Numerics.Distributions;

namespace AutoSweep.Core.Calibration;

/// <summary>A capacitance with its uncertainty, in the manner of JCGM 100:2008 (GUM).</summary>
/// <param name="Picofarads">The estimate.</param>
/// <param name="NoiseStandardUncertainty">The type A part, from the scatter of repeated readings, in picofarads.</param>
/// <param name="NoiseDegreesOfFreedom">How well that is known.</param>
/// <param name="MeterStandardUncertainty">The type B part, the meter's own error that all readings share, in picofarads.</param>
public sealed record CalibratedValue(
    double Picofarads, double NoiseStandardUncertainty, double NoiseDegreesOfFreedom, double MeterStandardUncertainty)
{
    /// <summary>Both parts together, in picofarads (JCGM 100, 5.1.2).</summary>
    public double StandardUncertainty =>
        Math.Sqrt((NoiseStandardUncertainty * NoiseStandardUncertainty) + (MeterStandardUncertainty * MeterStandardUncertainty));

    /// <summary>The effective degrees of freedom by Welch and Satterthwaite (JCGM 100, G.4.1); the limits of the type B part count as
    /// known exactly.</summary>
    public double DegreesOfFreedom => NoiseStandardUncertainty > 0
        ? NoiseDegreesOfFreedom * Math.Pow(StandardUncertainty / NoiseStandardUncertainty, 4)
        : double.PositiveInfinity;

    /// <summary>The coverage factor for 95 %: Student's t (JCGM 100, G.3.2).</summary>
    public double CoverageFactor => DegreesOfFreedom < 1e4
        ? StudentT.InvCDF(0, 1, Math.Max(1, DegreesOfFreedom), 0.975)
        : 1.959963984540054;

    /// <summary>Half of the interval that holds the true value in 95 cases of 100, in picofarads.</summary>
    public double ExpandedUncertainty => CoverageFactor * StandardUncertainty;
}
