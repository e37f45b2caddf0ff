namespace AutoSweep.Sources;

/// <summary>How a random source's network is arranged.</summary>
public enum SourceFamily
{
    /// <summary>The series law holds exactly.</summary>
    Series,

    /// <summary>The shunt law holds exactly.</summary>
    Shunt,

    /// <summary>A leaky transformer with a stray emf: near the series law, but not on it.</summary>
    Coupled,

    /// <summary>A tapped coil: peak and trap.</summary>
    Tapped,
}
