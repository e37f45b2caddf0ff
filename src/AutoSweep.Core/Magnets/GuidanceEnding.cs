namespace AutoSweep.Core.Magnets;

/// <summary>Why the work on a rod is over.</summary>
public enum GuidanceEnding
{
    /// <summary>The level is in its band.</summary>
    InBand,

    /// <summary>The band lies further in than the gap that is known to be there allows. Nothing went wrong; a measured gap may allow more.</summary>
    NearContact,

    /// <summary>Moves that should have been heard were not: the rod sticks, or it is another output's.</summary>
    NoEffect,

    /// <summary>The level went the wrong way by more than locking and noise explain: another rod, or in for out.</summary>
    WrongWay,

    /// <summary>The level does not stand still enough to be set.</summary>
    Unsteady,

    /// <summary>The moves that one rod is worth are used up.</summary>
    BudgetSpent,

    /// <summary>The person left the output as it is.</summary>
    LeftAlone,
}
