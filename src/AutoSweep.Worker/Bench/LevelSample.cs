using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Bench;

/// <summary>A settled level: the mean of several samples at the output's terminal.</summary>
/// <param name="Mean">The mean; the amplifier's gain is taken out.</param>
/// <param name="SampleSd">One standard deviation of single samples.</param>
/// <param name="RelativeNoise">One standard deviation of the mean as a share of it, pooled with what was seen before; above 0.</param>
/// <param name="Samples">How many samples were averaged.</param>
/// <param name="Settled">False when the samples still moved after every wait.</param>
public sealed record LevelSample(Level Mean, Level SampleSd, double RelativeNoise, int Samples, bool Settled)
{
    /// <summary>
    /// One standard deviation of the absolute level as a share of it: noise, and what the meter is uncertain by. None where its maker's limits are not known.
    /// </summary>
    public double? RelativeUncertainty { get; init; }
}
