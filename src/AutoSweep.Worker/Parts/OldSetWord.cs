namespace AutoSweep.Worker.Parts;

/// <summary>What there is to say of an old capacitor that is not put on the clips.</summary>
public enum OldSetWord
{
    /// <summary>It does not measure as a capacitor any more.</summary>
    NoCapacitor,

    /// <summary>It is left out until the reading begins anew.</summary>
    LeftOut,

    /// <summary>The reading ends here; what is missing is asked for when it begins anew.</summary>
    Ended,
}
