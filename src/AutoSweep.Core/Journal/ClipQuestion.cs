namespace AutoSweep.Core.Journal;

/// <summary>What is odd about what is clipped.</summary>
public enum ClipQuestion
{
    /// <summary>This output is done already.</summary>
    AlreadyDone,

    /// <summary>This output takes no part in the stage.</summary>
    NotInPlan,

    /// <summary>A steady tone that is none of the profile's.</summary>
    UnknownTone,

    /// <summary>Something is clipped, but its tone cannot be counted.</summary>
    ToneNotCounted,

    /// <summary>For a long time nothing sounds.</summary>
    NoTone,
}
