using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Matching;

/// <summary>One to three parts in parallel.</summary>
/// <param name="Parts">The parts, the largest first.</param>
public sealed record Combination(IReadOnlyList<Part> Parts)
{
    /// <summary>The sum of the measured values: capacitances in parallel add.</summary>
    public Capacitance Sum => Parts.Aggregate(Capacitance.Zero, (sum, part) => sum + part.Capacitance);

    /// <summary>The variance of the sum in picofarads squared, the measurements taken as independent.</summary>
    public double Variance => Parts.Sum(part => part.Measured.UncertaintyPicofarads * part.Measured.UncertaintyPicofarads);

    /// <summary>Some parts, the largest first.</summary>
    public static Combination Of(IEnumerable<Part> parts) =>
        new([.. parts.OrderByDescending(part => part.Measured.Picofarads).ThenBy(part => part.Id, StringComparer.Ordinal)]);
}
