namespace AutoSweep.Core.Journal;

/// <summary>An output's level was read with its fitted parts and compared with what its sweep predicted.</summary>
public sealed record OutputChecked : JournalEvent
{
    /// <summary>The output's number.</summary>
    public required int Output { get; init; }

    /// <summary>The tone counted in hertz; none where there was none to count.</summary>
    public double? ToneHertz { get; init; }

    /// <summary>The tone's level in millivolts rms, the sweep's hum taken out.</summary>
    public required double Millivolts { get; init; }

    /// <summary>The level that the sweep predicts with the fitted capacitance, in millivolts rms.</summary>
    public required double PredictedMillivolts { get; init; }

    /// <summary>One standard deviation of the difference in decibels: noise of both readings, and slow change between them.</summary>
    public required double StandardUncertaintyDecibels { get; init; }

    /// <summary>Whether noise and slow change explain the difference.</summary>
    public required bool IsExplained { get; init; }

    /// <summary>How many decibels the level lies above the prediction; negative infinity without a level.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double DifferenceDecibels => 20 * Math.Log10(Millivolts / PredictedMillivolts);
}
