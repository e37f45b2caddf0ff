using AutoSweep.Core.Fitting;
using MathNet.Numerics.LinearAlgebra;

namespace AutoSweep.Core.Calibration;

/// <summary>Solves a calibration's readings for the stray and every relay.</summary>
/// <remarks>
/// Weighted least squares over the sets' means, the weights from the scatter of repeated readings (type A). The meter's own error is
/// common to all readings (type B): its gain moves every value in proportion, its offset the stray alone; it is added to the covariance
/// after the fit and does not average down (JCGM 100:2008, 4.3 and F.2.4.5).
/// </remarks>
public static class CalibrationSolver
{
    /// <summary>Solves and judges.</summary>
    /// <param name="readings">The readings; must hold every relay alone, or as much by other sets, and the open fixture.</param>
    /// <param name="relays">How many relays the fixture has.</param>
    /// <param name="meter">The meter's stated accuracy.</param>
    /// <param name="options">What is known before.</param>
    /// <exception cref="ArgumentException">The readings do not tell every relay.</exception>
    public static CalibrationSolution Solve(
        IEnumerable<CalibrationReading> readings, int relays, MeterAccuracy meter, CalibrationSolverOptions options)
    {
        var sets = CalibrationSet.Gather(readings);
        var measured = ReadingNoise.Of(sets);
        var noise = measured ?? options.AssumedNoise;
        var model = new AdditiveModel(sets, relays, noise, measured?.DegreesOfFreedom ?? double.PositiveInfinity);
        var (fit, off) = AdditivitySearch.Run(model);
        var values = Values(fit, model, noise.DegreesOfFreedom, meter);
        var (stray, each) = (values[0], values[1..]);
        var dead = SwitchingRule.Dead(each, options);
        return new(
            stray, each, Covariance(fit, model, meter), noise, model.Probability(fit),
            [.. SwitchingRule.Findings(stray, each, dead, options), .. LossRule.Findings(model, each, dead, options), .. off]);
    }

    private static CalibratedValue[] Values(LinearFit fit, AdditiveModel model, double degrees, MeterAccuracy meter) =>
    [
        .. fit.Coefficients.Select((value, index) => new CalibratedValue(
            value, Math.Sqrt(fit.Covariance[index, index] * Widening(fit, model)), degrees, MeterUncertainty(value, index, meter))),
    ];

    private static double MeterUncertainty(double value, int index, MeterAccuracy meter)
    {
        var gain = value * meter.GainStandardUncertainty;
        return index == 0 ? Math.Sqrt((gain * gain) + (meter.OffsetStandardUncertainty * meter.OffsetStandardUncertainty)) : Math.Abs(gain);
    }

    // Where the sets scatter more than their readings, the larger scatter counts.
    private static double Widening(LinearFit fit, AdditiveModel model) => model.Holds(fit) ? 1 : Math.Max(1, fit.Variance);

    private static Matrix<double> Covariance(LinearFit fit, AdditiveModel model, MeterAccuracy meter)
    {
        var gain = meter.GainStandardUncertainty;
        var covariance = (fit.Covariance * Widening(fit, model)) + (fit.Coefficients.OuterProduct(fit.Coefficients) * (gain * gain));
        covariance[0, 0] += meter.OffsetStandardUncertainty * meter.OffsetStandardUncertainty;
        return covariance;
    }
}
