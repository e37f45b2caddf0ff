using AutoSweep.Core.Peaks;

namespace AutoSweep.Sources;

/// <summary>A source, the answer to it by hand, and what it cost.</summary>
public sealed record HandOutcome(RandomSource Source, PeakResult Result, int Dialings, int Turns)
{
    /// <summary>The decibels lost at the answer.</summary>
    public double LossDecibels => Result.Peak is { } peak ? Source.LossDecibels(peak.Picofarads) : double.PositiveInfinity;

    /// <summary>Whether more is lost than the answer's own 95 % bound says.</summary>
    public bool IsOutside => LossDecibels > Result.LossBoundDecibels;
}
