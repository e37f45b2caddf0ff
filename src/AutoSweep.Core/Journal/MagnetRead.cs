using AutoSweep.Core.Magnets;

namespace AutoSweep.Core.Journal;

/// <summary>A steady level was read at an output while its magnet is being set: as found, or after a move.</summary>
public sealed record MagnetRead : JournalEvent
{
    /// <summary>The output's number.</summary>
    public required int Output { get; init; }

    /// <summary>The level in millivolts rms.</summary>
    public required double Millivolts { get; init; }

    /// <summary>What it should be, in millivolts rms: the target with the generator's overall gain in.</summary>
    public required double TargetMillivolts { get; init; }

    /// <summary>One standard deviation of the level by noise and wobble, in decibels.</summary>
    public required double SdDecibels { get; init; }

    /// <summary>The move that was asked for since the reading before; none for a first or a repeated reading.</summary>
    public MagnetMove? After { get; init; }

    /// <summary>How many decibels the level lies above its target.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double Decibels => 20 * Math.Log10(Millivolts / TargetMillivolts);

    /// <summary>The reading as the guidance takes it.</summary>
    public MagnetReading ToReading() => new(Decibels, SdDecibels, After);
}
