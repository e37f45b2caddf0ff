namespace AutoSweep.Core.Curve;

/// <summary>What an output was compared with.</summary>
public enum OutlierRule
{
    /// <summary>A local line through its neighbours, itself left out (<see cref="LocalRegression"/>).</summary>
    LocalRegression,

    /// <summary>The median of its group, which is too short for lines (<see cref="HampelIdentifier"/>).</summary>
    GroupMedian,

    /// <summary>Nothing.</summary>
    None,
}
