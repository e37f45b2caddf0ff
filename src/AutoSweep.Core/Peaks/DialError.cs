using AutoSweep.Core.Decades;

namespace AutoSweep.Core.Peaks;

/// <summary>What a dialled box is off by, seen as further noise of the level: on a flank a capacitance error moves the level.</summary>
/// <remarks>
/// Only the difference to the setting nearest the peak counts: what both have in common moves every reading and the answer alike,
/// and goes when the box is measured as it stands there.
/// </remarks>
internal static class DialError
{
    // A step for the slope, as a share of the capacitance: far below any half-width.
    private const double Step = 1e-3;

    /// <summary>The readings, each with its dials' part in its standard deviation.</summary>
    internal static FitPoint[] Widen(FitPoint[] points, LawMixture mixture, DecadeBox box)
    {
        var peak = box.Nearest(Math.Exp(mixture.LogPeak));
        return [.. points.Select(point => point with
        {
            Sd = Widened(point.Sd, mixture, point.Picofarads, point.Minutes, box.DifferenceSd(box.Nearest(point.Picofarads), peak)),
        })];
    }

    /// <summary>The standard deviation of a reading's logarithm, the dials' part in it.</summary>
    internal static double Widened(double sd, LawMixture mixture, double picofarads, double minutes, double differenceSd)
    {
        var upper = mixture.Best.Predict(picofarads * (1 + Step), minutes).LogLevel;
        var lower = mixture.Best.Predict(picofarads * (1 - Step), minutes).LogLevel;
        var slope = (upper - lower) / (2 * Step * picofarads);
        return double.IsFinite(slope) ? Math.Sqrt((sd * sd) + (slope * slope * differenceSd * differenceSd)) : sd;
    }
}
