namespace AutoSweep.Core.Curve;

/// <summary>A target curve drawn from generators that the shop has finished.</summary>
/// <remarks>
/// Each generator is as loud as it is: its own gain is fitted out first. Gains and curve are found in turns, both as bisquare centres
/// (<see cref="RobustLocation"/>), so that an odd output of one job moves neither, nor does a whole odd job once there are three.
/// </remarks>
public static class ShopCurve
{
    // Converges by a factor of the share of missing outputs; a ten-thousandth of a decibel is nothing.
    private const int MostRounds = 100;

    private const double EnoughDecibels = 1e-9;

    /// <summary>The tolerance in standard deviations of the jobs' scatter at an output: 95 % of a normal scatter.</summary>
    public const double ToleranceInDeviations = 2;

    // A scatter of fewer jobs is chance.
    private const int FewestForScatter = 3;

    /// <summary>The curve.</summary>
    /// <param name="name">What the shop calls it.</param>
    /// <param name="source">From which jobs it was drawn, in words.</param>
    /// <param name="curves">One curve a finished job, usually as left; at least one, with levels.</param>
    /// <param name="leastToleranceDecibels">The floor of the tolerance, above 0.</param>
    public static TargetCurve Of(
        string name, string source, IReadOnlyList<LevelCurve> curves, double leastToleranceDecibels = TargetCurve.UsualToleranceDecibels)
    {
        var readings = curves.SelectMany((curve, job) => curve.Points.Where(point => point.Millivolts > 0)
            .Select(point => new JobLevel(job, point.Output, 20 * Math.Log10(point.Millivolts), CurveComparison.DecibelsOfShare * point.RelativeUncertainty)))
            .ToList();
        var gains = Gains(readings, curves.Count);
        return new(name, source, [.. readings.GroupBy(one => one.Output).OrderBy(group => group.Key)
            .Select(group => Point([.. group], gains, leastToleranceDecibels))]);
    }

    // The gains have a mean of 0: the curve keeps millivolts that are usual in this shop.
    private static double[] Gains(List<JobLevel> readings, int jobs)
    {
        var gains = new double[jobs];
        for (var round = 0; round < MostRounds; round++)
        {
            var next = Next(readings, gains);
            var change = next.Zip(gains, (one, before) => Math.Abs(one - before)).Max();
            gains = next;
            if (change < EnoughDecibels)
                break;
        }
        return gains;
    }

    private static double[] Next(List<JobLevel> readings, double[] gains)
    {
        var levels = readings.GroupBy(one => one.Output).ToDictionary(group => group.Key, group => Centre([.. group], one => one.Decibels - gains[one.Job]));
        var next = (double[])gains.Clone();
        foreach (var job in readings.GroupBy(one => one.Job))
            next[job.Key] = Centre([.. job], one => one.Decibels - levels[one.Output]);
        var mean = next.Average();
        return [.. next.Select(gain => gain - mean)];
    }

    private static double Centre(List<JobLevel> readings, Func<JobLevel, double> decibels) =>
        RobustLocation.Of([.. readings.Select(decibels)], [.. readings.Select(one => one.Uncertainty)]);

    private static TargetPoint Point(List<JobLevel> readings, double[] gains, double leastTolerance)
    {
        double[] levels = [.. readings.Select(one => one.Decibels - gains[one.Job])];
        var centre = Centre(readings, one => one.Decibels - gains[one.Job]);
        var spread = levels.Length < FewestForScatter ? 0 : RobustScale.Of(levels, centre);
        return new(readings[0].Output, Math.Pow(10, centre / 20), Math.Max(leastTolerance, ToleranceInDeviations * spread));
    }

    private sealed record JobLevel(int Job, int Output, double Decibels, double Uncertainty);
}
