namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>How a part of the check with hardware ended.</summary>
public enum LiveVerdict
{
    /// <summary>The meter does as its driver file says.</summary>
    Ok,

    /// <summary>The meter does otherwise, or worse.</summary>
    Short,

    /// <summary>It could not be checked; the reason says what it takes.</summary>
    NotChecked,
}
