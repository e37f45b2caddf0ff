namespace AutoSweep.Core.Journal;

/// <summary>An output's survey is complete.</summary>
public sealed record OutputSurveyed : JournalEvent
{
    /// <summary>The output's number.</summary>
    public required int Output { get; init; }

    /// <summary>The tone counted in hertz; none where there is none to count.</summary>
    public double? ToneHertz { get; init; }

    /// <summary>The level in millivolts rms.</summary>
    public required double Millivolts { get; init; }

    /// <summary>One standard deviation of single samples in millivolts.</summary>
    public required double NoiseMillivolts { get; init; }

    /// <summary>What was noticed; empty for a healthy output.</summary>
    public required IReadOnlyList<SurveyFinding> Flags { get; init; }
}
