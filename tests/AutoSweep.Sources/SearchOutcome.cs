using AutoSweep.Core.Peaks;

namespace AutoSweep.Sources;

/// <summary>A source, the answer to it, and how good that is.</summary>
public sealed record SearchOutcome(RandomSource Source, PeakResult Result)
{
    /// <summary>The decibels lost at the answer; infinite where there is none.</summary>
    public double LossDecibels => Result.Peak is { } peak ? Source.LossDecibels(peak.Picofarads) : double.PositiveInfinity;

    /// <summary>Whether the truth lies outside peak ± 2.576 sd (99 % of a normal distribution); an answer without a fit states no interval.</summary>
    public bool IsOutside =>
        !double.IsNaN(Result.PeakSdPicofarads)
        && !(Math.Abs(Result.Peak!.Value.Picofarads - Source.Peak.Picofarads) <= 2.576 * Result.PeakSdPicofarads);

    /// <summary>The error over the least standard deviation that any unbiased method has with as many readings: 2·noise·half-width/√N.</summary>
    public double ErrorOverCramerRaoBound =>
        Math.Abs(Result.Peak!.Value.Picofarads - Source.Peak.Picofarads)
        / (2 * Source.RelativeNoise * Source.Peak.HalfWidthPicofarads / Math.Sqrt(Result.Trace.Count));
}
