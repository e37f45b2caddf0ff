namespace AutoSweep.Core.Journal;

/// <summary>What told which output is clipped.</summary>
public enum RecognisedBy
{
    /// <summary>Its counted tone sat on one tone of the profile and repeated.</summary>
    Tone,

    /// <summary>The tone could not be trusted; the order of clipping told.</summary>
    Order,

    /// <summary>The person at the bench said so, or followed the asked order step by step.</summary>
    Person,
}
