namespace AutoSweep.Core.Journal;

/// <summary>A settled reading: the mean of several samples of the level at the output's terminal.</summary>
public sealed record LevelRead : JournalEvent
{
    /// <summary>The stage that read it.</summary>
    public required JobStage Stage { get; init; }

    /// <summary>The output that was clipped.</summary>
    public required int Output { get; init; }

    /// <summary>The calibrated capacitance in circuit in picofarads; none in a survey.</summary>
    public long? Picofarads { get; init; }

    /// <summary>The level in millivolts rms at the terminal, the amplifier's gain taken out.</summary>
    public required double Millivolts { get; init; }

    /// <summary>One standard deviation of the mean, as a share of the level.</summary>
    public required double RelativeNoise { get; init; }

    /// <summary>How many samples were averaged.</summary>
    public required int Samples { get; init; }

    /// <summary>False when the samples still moved after every wait.</summary>
    public required bool Settled { get; init; }

    /// <summary>When it was read, in seconds of bench time since this output was recognised.</summary>
    public required double Seconds { get; init; }
}
