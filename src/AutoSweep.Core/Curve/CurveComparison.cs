namespace AutoSweep.Core.Curve;

/// <summary>A level curve against a target.</summary>
/// <param name="GainDecibels">The overall gain of the generator over the target in decibels, fitted robustly.</param>
/// <param name="Deviations">One an output that was read, in ascending number.</param>
public sealed record CurveComparison(double GainDecibels, IReadOnlyList<CurveDeviation> Deviations)
{
    // 20 log10 e: a small share of a level in decibels.
    internal const double DecibelsOfShare = 8.685889638;

    // Coverage factor for 95 % (GUM, table G.1).
    internal const double CoverageFactor = 2;

    /// <summary>Compares a curve with a target.</summary>
    /// <remarks>
    /// The overall gain is set elsewhere in an organ, so it is fitted out: the bisquare centre of most outputs' differences
    /// (<see cref="RobustLocation.OfMost"/>), so that half a generator of drifted filters does not make the sound half too loud. A deviation is
    /// one only beyond tolerance and reading uncertainty together.
    /// </remarks>
    public static CurveComparison Of(LevelCurve curve, TargetCurve target)
    {
        var wanted = target.Points.ToDictionary(point => point.Output);
        var pairs = curve.Points.Where(point => point.IsDetected && wanted.ContainsKey(point.Output)).ToList();
        var gain = pairs.Count == 0 ? 0 : RobustLocation.OfMost(
            [.. pairs.Select(point => 20 * Math.Log10(point.Millivolts / wanted[point.Output].Millivolts))],
            [.. pairs.Select(point => DecibelsOfShare * point.RelativeUncertainty)]);
        return new(gain, [.. curve.Points.Select(point => Compare(point, wanted.GetValueOrDefault(point.Output), gain))]);
    }

    private static CurveDeviation Compare(LevelPoint point, TargetPoint? target, double gain)
    {
        var uncertainty = CoverageFactor * DecibelsOfShare * point.RelativeUncertainty;
        if (target is null)
            return new(point.Output, point.Millivolts, null, null, uncertainty, 0, CurveVerdict.NotCompared);
        var scaled = target.Millivolts * Math.Pow(10, gain / 20);
        if (!point.IsDetected)
            return new(point.Output, point.Millivolts, scaled, null, uncertainty, target.ToleranceDecibels, CurveVerdict.NotCompared);
        var off = 20 * Math.Log10(point.Millivolts / scaled);
        var verdict = Math.Abs(off) <= target.ToleranceDecibels + uncertainty ? CurveVerdict.Within : off > 0 ? CurveVerdict.TooLoud : CurveVerdict.TooSoft;
        return new(point.Output, point.Millivolts, scaled, off, uncertainty, target.ToleranceDecibels, verdict);
    }
}
