namespace AutoSweep.Sources;

/// <summary>What is known of a box of 1 %.</summary>
public enum BoxKnowledge
{
    /// <summary>Nothing but what is printed on it.</summary>
    PrintedOnly,

    /// <summary>It is measured on the capacitance meter as it stands at the end of each sweep.</summary>
    MeasuredAtTheEnd,

    /// <summary>Every position was measured once.</summary>
    CalibratedOnce,
}
