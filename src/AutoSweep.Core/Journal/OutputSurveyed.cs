namespace AutoSweep.Core.Journal;

/// <summary>An output's survey is complete.</summary>
public sealed record OutputSurveyed : JournalEvent
{
    /// <summary>The output's number.</summary>
    public required int Output { get; init; }

    /// <summary>The survey that read it: as found (the default, and all that old journals have) or as left.</summary>
    public JobStage Stage { get; init; } = JobStage.Survey;

    /// <summary>The tone counted in hertz; none where there is none to count.</summary>
    public double? ToneHertz { get; init; }

    /// <summary>
    /// Whether a person named the output and no tone was looked for, as on a bench whose meter is read by eye: that <see cref="ToneHertz"/> is missing then
    /// says nothing of the output. False in journals from before it was kept.
    /// </summary>
    public bool IsNamedByPerson { get; init; }

    /// <summary>The level in millivolts rms.</summary>
    public required double Millivolts { get; init; }

    /// <summary>One standard deviation of single samples in millivolts.</summary>
    public required double NoiseMillivolts { get; init; }

    /// <summary>
    /// The standard uncertainty of the level as a share of it: noise, and what the meter is uncertain by at this part of its range.
    /// None in journals from before it was kept.
    /// </summary>
    public double? RelativeUncertainty { get; init; }

    /// <summary>
    /// How far the level swings at the rate of its wheel's turns, as a share of it, peak; the detector's own evening-out is taken out.
    /// None where the meter takes no bursts.
    /// </summary>
    public double? WheelSwing { get; init; }

    /// <summary>One standard deviation of <see cref="WheelSwing"/>.</summary>
    public double? WheelSwingUncertainty { get; init; }

    /// <summary>The hum's frequency in hertz, or a multiple's, where the counter found it in the place of a tone.</summary>
    public double? HumHertz { get; init; }

    /// <summary>What was noticed; empty for a healthy output.</summary>
    public required IReadOnlyList<SurveyFinding> Flags { get; init; }
}
