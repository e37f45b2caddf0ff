using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Levelling;

/// <summary>The noise of levels in decibels.</summary>
internal static class LevelDecibels
{
    private const double OfShare = 8.685889638; // 20·log10(e)

    /// <summary>One standard deviation of a reading: what the meter's readings are known to have, or what its own samples show, whichever is more.</summary>
    internal static double Sd(LevelSample level) =>
        OfShare * Math.Max(level.RelativeNoise, level.SampleSd.Volts / Math.Sqrt(level.Samples) / Math.Max(level.Mean.Volts, double.Epsilon));

    /// <summary>One standard deviation of the difference of two.</summary>
    internal static double Sd(LevelSample one, LevelSample other) => double.Hypot(Sd(one), Sd(other));
}
