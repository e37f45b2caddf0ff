namespace AutoSweep.Core.Generator;

/// <summary>What stands between a pickup coil and its terminal.</summary>
public enum FilterKind
{
    /// <summary>No filter, at most a resistance wire.</summary>
    None,

    /// <summary>A choke or transformer without a capacitor.</summary>
    Transformer,

    /// <summary>A coil, often tapped, and a capacitor that resonate at the tone.</summary>
    TunedLc,

    /// <summary>The same, added to the generator later.</summary>
    RetrofitLc,
}
