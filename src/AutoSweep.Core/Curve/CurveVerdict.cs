namespace AutoSweep.Core.Curve;

/// <summary>What may be said of an output's level against its target.</summary>
public enum CurveVerdict
{
    /// <summary>Inside the tolerance, or so near outside that the reading's uncertainty explains it.</summary>
    Within,

    /// <summary>Too loud by more than tolerance and uncertainty.</summary>
    TooLoud,

    /// <summary>Too soft by more than tolerance and uncertainty.</summary>
    TooSoft,

    /// <summary>No target for this output, or no level to compare.</summary>
    NotCompared,
}
