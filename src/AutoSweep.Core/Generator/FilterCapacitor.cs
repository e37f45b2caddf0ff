using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Generator;

/// <summary>The capacitor that tunes an output's filter, as the maker fitted it.</summary>
/// <param name="ExpectedPicofarads">The value the maker fitted, in picofarads, and so the first guess of a sweep.</param>
/// <param name="Law">How the level depends on the capacitance, as far as it is known beforehand.</param>
public sealed record FilterCapacitor(
    [property: Description("The value the maker fitted, in picofarads: the first guess of a sweep."), Range(100, 10_000_000)]
    long ExpectedPicofarads,
    [property: Description("How the level depends on the capacitance: series (the capacitor between pickup coil and winding), shunt "
        + "(the level is taken across it), general (tapped: a peak and a trap) or unknown.")]
    ResponseLaw Law)
{
    /// <summary>The value the maker fitted.</summary>
    [JsonIgnore]
    public Capacitance Expected => new(ExpectedPicofarads);
}
