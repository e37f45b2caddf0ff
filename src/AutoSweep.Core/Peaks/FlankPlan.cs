namespace AutoSweep.Core.Peaks;

/// <summary>Chooses a reading once there are fits: the place on the flanks that is expected to narrow the peak most.</summary>
internal static class FlankPlan
{
    // In half-widths from each fit's peak. Near one half-width the level changes most with the capacitance;
    // farther places tell laws and hum apart.
    internal static readonly double[] Places = [0.3, 0.5, 0.7, 0.85, 1, 1.2, 1.5, 2, 3];

    internal static double Choose(LawMixture mixture, PeakSearchOptions options, double minutes, double noise)
    {
        var best = (Gain: double.NegativeInfinity, Picofarads: Math.Exp(mixture.LogPeak));
        foreach (var fit in mixture.Fits.Take(3))
        {
            foreach (var place in Places)
            {
                Consider(1 + place * fit.RelativeHalfWidth);
                Consider(1 - place * fit.RelativeHalfWidth);
            }

            void Consider(double factor)
            {
                var picofarads = Math.Clamp(Math.Exp(fit.LogPeak) * factor, options.Smallest.Picofarads, options.Largest.Picofarads);
                var gain = mixture.Gain(picofarads, minutes, noise);
                if (gain > best.Gain)
                    best = (gain, picofarads);
            }
        }
        return best.Picofarads;
    }
}
