namespace AutoSweep.Core.Peaks;

/// <summary>Chooses a reading while the peak's place is still wide open: the one that tells most of it over the net.</summary>
internal static class GridPlan
{
    internal const int Candidates = 41;

    // So many points, drawn evenly from the net's probability, tell the best candidate from the second best.
    private const int Points = 300;

    internal static double Choose(PeakGrid grid, PeakPrior prior, PeakSearchOptions options, double noise)
    {
        var points = Draw(grid);
        var best = (Gain: double.NegativeInfinity, Picofarads: (double)prior.Expected.Picofarads);
        for (var i = 0; i < Candidates; i++)
        {
            var picofarads = Candidate(prior, i);
            picofarads = Math.Clamp(picofarads, options.Smallest.Picofarads, options.Largest.Picofarads);
            var gain = Gain(grid, points, picofarads, noise);
            if (gain > best.Gain)
                best = (gain, picofarads);
        }
        return best.Picofarads;
    }

    /// <summary>A place within 2.6 standard deviations of the belief, from 0 up to <see cref="Candidates"/>.</summary>
    internal static double Candidate(PeakPrior prior, int i) =>
        prior.Expected.Picofarads * Math.Exp(prior.LogSpread * 2.6 * (2.0 * i / (Candidates - 1) - 1));

    // Systematic resampling: every point stands for the same share of the probability.
    internal static int[] Draw(PeakGrid grid)
    {
        var weights = grid.Weights();
        var points = new int[Points];
        var (k, sum) = (0, weights[0]);
        for (var i = 0; i < Points; i++)
        {
            while (sum < (i + 0.5) / Points && k < weights.Length - 1)
                sum += weights[++k];
            points[i] = k;
        }
        return points;
    }

    // The square of the covariance of peak and reading over the reading's variance: what a straight-line estimate takes off the peak's variance.
    internal static double Gain(PeakGrid grid, int[] points, double picofarads, double noise)
    {
        double level = 0, square = 0, peak = 0, joint = 0;
        foreach (var k in points)
        {
            var expected = grid.MeanLogLevel(k) + grid.LogShape(k, picofarads);
            var logPeak = grid.LogPeak(k);
            level += expected;
            square += expected * expected;
            peak += logPeak;
            joint += expected * logPeak;
        }
        level /= points.Length;
        var covariance = joint / points.Length - level * (peak / points.Length);
        return covariance * covariance / (square / points.Length - level * level + noise * noise);
    }
}
