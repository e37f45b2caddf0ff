namespace AutoSweep.Core.Peaks;

/// <summary>Why a peak search ended. Every search ends with one; only <see cref="BoundReached"/> is full success.</summary>
public enum PeakStopReason
{
    /// <summary>The 95 % bound on the level lost is under the limit.</summary>
    BoundReached,

    /// <summary>The reading budget is spent; the best answer so far stands, with its wider uncertainty.</summary>
    BudgetSpent,

    /// <summary>The level only rises or only falls over the whole range.</summary>
    NoPeakInRange,

    /// <summary>The peak lies so near the end of the range that one flank cannot be read.</summary>
    PeakAtEdge,

    /// <summary>The level does not depend on the capacitance: nothing is tuned here.</summary>
    ResponseFlat,

    /// <summary>No law explains the readings within their noise.</summary>
    ModelDoesNotHold,

    /// <summary>The tone went away during the search.</summary>
    LevelLost,
}
