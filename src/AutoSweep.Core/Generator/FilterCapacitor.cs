using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Generator;

/// <summary>The capacitor that tunes an output's filter, as the maker fitted it.</summary>
/// <param name="ExpectedPicofarads">The value the maker fitted, in picofarads, and so the first guess of a sweep.</param>
/// <param name="Law">How the level depends on the capacitance, as far as it is known beforehand.</param>
public sealed record FilterCapacitor(long ExpectedPicofarads, ResponseLaw Law)
{
    /// <summary>The value the maker fitted.</summary>
    public Capacitance Expected => new(ExpectedPicofarads);
}
