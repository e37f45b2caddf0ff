namespace AutoSweep.Core.Generator;

/// <summary>What a counted frequency turned out to be.</summary>
public enum ToneMatchKind
{
    /// <summary>The counter gave 0 or no usable number: nothing is clipped, the output is dead, or the level is too low to count.</summary>
    Nothing,

    /// <summary>The tone of one output, near enough to be trusted.</summary>
    Tone,

    /// <summary>Between tones, or too far from the nearest: a miscount, a generator not up to speed, or another one.</summary>
    OffTone,

    /// <summary>The mains frequency or a low multiple of it, and no tone: an open clip or a dead output.</summary>
    Hum,

    /// <summary>A tone that lies so near to a multiple of the mains that the count alone cannot tell which it is.</summary>
    HumOrTone,
}
