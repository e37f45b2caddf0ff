using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;

namespace AutoSweep.Worker.Reports;

/// <summary>What an output's sweep found.</summary>
public sealed record ReportPeak
{
    /// <summary>The capacitance that the output wants at nominal mains frequency, in picofarads; none where no peak was found.</summary>
    public required long? WantedPicofarads { get; init; }

    /// <summary>The standard uncertainty of that in picofarads, as the readings tell, and what is not known of the mains; the fixture's own is not in
    /// it.</summary>
    public required double? StandardUncertaintyPicofarads { get; init; }

    /// <summary>Whether no tone was counted, so that the mains were taken as nominal.</summary>
    public required bool MainsTakenAsNominal { get; init; }

    /// <summary>The peak at the tone at which it was measured, in picofarads.</summary>
    public required long? PeakPicofarads { get; init; }

    /// <summary>The standard uncertainty of that in picofarads.</summary>
    public required double? PeakStandardUncertaintyPicofarads { get; init; }

    /// <summary>The half-power half-width in picofarads.</summary>
    public required double? HalfWidthPicofarads { get; init; }

    /// <summary>The filter's quality factor.</summary>
    public required double? Q { get; init; }

    /// <summary>The level at the peak in millivolts rms.</summary>
    public required double? PeakMillivolts { get; init; }

    /// <summary>The law that holds best.</summary>
    public required ResponseLaw Law { get; init; }

    /// <summary>Why the search ended.</summary>
    public required PeakStopReason Reason { get; init; }

    /// <summary>How many readings it took.</summary>
    public required int Readings { get; init; }

    /// <summary>The journal entry that holds the result.</summary>
    public required long? Entry { get; init; }

    /// <summary>The result of a sweep.</summary>
    public static ReportPeak Of(JobState state, OutputSwept swept, JournalPlaces places)
    {
        var wanted = SweptResult.PeakOf(state, swept);
        return new()
        {
            WantedPicofarads = wanted?.Capacitance.Picofarads,
            StandardUncertaintyPicofarads = wanted?.SdPicofarads,
            MainsTakenAsNominal = wanted is { IsMainsAssumed: true },
            PeakPicofarads = swept.PeakPicofarads,
            PeakStandardUncertaintyPicofarads = swept.PeakSdPicofarads,
            HalfWidthPicofarads = swept.HalfWidthPicofarads,
            Q = swept.Q,
            PeakMillivolts = swept.PeakMillivolts,
            Law = swept.Law,
            Reason = swept.Reason,
            Readings = swept.Readings,
            Entry = places.Of(swept),
        };
    }
}
