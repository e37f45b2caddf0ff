using AutoSweep.Core.Generator;
using AutoSweep.Core.Peaks;

namespace AutoSweep.Core.Journal;

/// <summary>An output's sweep is complete: the answer of its peak search.</summary>
public sealed record OutputSwept : JournalEvent
{
    /// <summary>The output's number.</summary>
    public required int Output { get; init; }

    /// <summary>The tone counted in hertz while it was swept; the peak belongs to this tone.</summary>
    public required double ToneHertz { get; init; }

    /// <summary>Why the search ended.</summary>
    public required PeakStopReason Reason { get; init; }

    /// <summary>The calibrated capacitance at the peak in picofarads; none where nothing was found.</summary>
    public long? PeakPicofarads { get; init; }

    /// <summary>One standard deviation of the peak in picofarads.</summary>
    public double? PeakSdPicofarads { get; init; }

    /// <summary>The half-power half-width in picofarads.</summary>
    public double? HalfWidthPicofarads { get; init; }

    /// <summary>The filter's quality factor.</summary>
    public double? Q { get; init; }

    /// <summary>The tone's level at the peak in millivolts rms.</summary>
    public double? PeakMillivolts { get; init; }

    /// <summary>Hum under the tone in millivolts rms.</summary>
    public double? HumMillivolts { get; init; }

    /// <summary>The law that holds best.</summary>
    public required ResponseLaw Law { get; init; }

    /// <summary>Natural-logarithm odds of series over shunt from this output's readings alone.</summary>
    public double LogOddsSeriesOverShunt { get; init; }

    /// <summary>Natural-logarithm odds of the general law over the better of the two from this output's readings alone.</summary>
    public double LogOddsGeneral { get; init; }

    /// <summary>The 95 % bound on the level lost at the peak in decibels.</summary>
    public double? LossBoundDecibels { get; init; }

    /// <summary>How many readings the search was told.</summary>
    public required int Readings { get; init; }

    /// <summary>
    /// What a box that is dialled by hand measured as it stood at the end, less what its dials said, in picofarads: the readings are in what the
    /// dials said, the peak has this in it. None where nobody measured, or relays set the capacitance.
    /// </summary>
    public long? BoxOffsetPicofarads { get; init; }
}
