using AutoSweep.Core.Magnets;

namespace AutoSweep.Core.Journal;

/// <summary>The work on an output's magnet is over.</summary>
public sealed record OutputLevelled : JournalEvent
{
    /// <summary>The output's number.</summary>
    public required int Output { get; init; }

    /// <summary>Why it is over.</summary>
    public required GuidanceEnding Ending { get; init; }

    /// <summary>How many moves were made.</summary>
    public required int Moves { get; init; }

    /// <summary>What the level should be, in millivolts rms.</summary>
    public required double TargetMillivolts { get; init; }

    /// <summary>The level before the first move in millivolts rms; none where it was never read.</summary>
    public double? BeforeMillivolts { get; init; }

    /// <summary>The level now.</summary>
    public double? AfterMillivolts { get; init; }

    /// <summary>What a millimetre changes this rod's level by, in decibels; none where no move told.</summary>
    public double? SlopeDecibelsPerMillimetre { get; init; }

    /// <summary>The slopes between which the true one lies in nineteen of twenty cases; none where no move told.</summary>
    public double? SlopeLeast { get; init; }

    /// <summary>See <see cref="SlopeLeast"/>.</summary>
    public double? SlopeMost { get; init; }
}
