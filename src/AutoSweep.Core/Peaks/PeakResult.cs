using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>The answer of a peak search: the best it knows, how well it knows it, and why it stopped.</summary>
public sealed record PeakResult
{
    /// <summary>Why the search ended.</summary>
    public required PeakStopReason Reason { get; init; }

    /// <summary>The capacitance at which the output is loudest; the best reading's where no fit holds; none if nothing was read.</summary>
    public required Capacitance? Peak { get; init; }

    /// <summary>One standard deviation of <see cref="Peak"/> in picofarads, spread between laws included; not a number without a fit.</summary>
    public double PeakSdPicofarads { get; init; } = double.NaN;

    /// <summary>
    /// The half-power half-width in picofarads: half the distance between the two capacitances at which the level is 3.01 dB down;
    /// not a number without a fit. The useful unit for an error in <see cref="Peak"/>.
    /// </summary>
    public double HalfWidthPicofarads { get; init; } = double.NaN;

    /// <summary>Quality factor of the tuned filter; not a number without a fit.</summary>
    public double Q { get; init; } = double.NaN;

    /// <summary>The tone's level at the peak, hum taken out.</summary>
    public Level? LevelAtPeak { get; init; }

    /// <summary>Hum under the tone as the fit found it (adds in quadrature).</summary>
    public Level? Hum { get; init; }

    /// <summary>The law that holds best.</summary>
    public ResponseLaw Law { get; init; }

    /// <summary>Natural-logarithm odds of series over shunt from these readings alone; what this output adds to its group's evidence.</summary>
    public double LogOddsSeriesOverShunt { get; init; }

    /// <summary>Natural-logarithm odds of the general law over the better of the two from these readings alone.</summary>
    public double LogOddsGeneral { get; init; }

    /// <summary>The 95 % bound on the level lost at <see cref="Peak"/>, in decibels; infinite without a fit.</summary>
    public double LossBoundDecibels { get; init; } = double.PositiveInfinity;

    /// <summary>Every reading that the search was told, in order, and what became of it.</summary>
    public required IReadOnlyList<PeakTracePoint> Trace { get; init; }
}
