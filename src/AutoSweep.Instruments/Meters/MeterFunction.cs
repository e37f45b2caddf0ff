namespace AutoSweep.Instruments.Meters;

/// <summary>What a meter is set to measure.</summary>
internal enum MeterFunction
{
    /// <summary>Not known: nothing set up yet, or something went wrong since.</summary>
    Unknown,

    /// <summary>The AC level.</summary>
    Level,

    /// <summary>The frequency.</summary>
    Frequency,
}
