using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Diagnosis;

/// <summary>The level of a tuned output with another capacitor than the best, and a lossy one.</summary>
/// <remarks>
/// Exact for the two laws, with C and D as a meter gives them in parallel. Series: the current is that of R + jX and a capacitor of the
/// impedance z (D - j) in units of X, z = C*/C/(1 + D²), so V/V* = (1/Q)/|1/Q + zD + j(1 - z)|. Shunt: V = E/(1 + jwC(1 - jD)(R + jX)).
/// With D = 0 both are the parabolas of docs/peak-search.md.
/// </remarks>
/// <param name="PeakPicofarads">The capacitance at the peak; above 0.</param>
/// <param name="Q">The filter's quality factor; above 0.</param>
/// <param name="Law">The law; general is taken as shunt, which holds near the peak.</param>
internal readonly record struct CapacitorEffect(double PeakPicofarads, double Q, ResponseLaw Law)
{
    /// <summary>The decibels lost with a capacitance and a dissipation factor; 0 or more.</summary>
    public double LossDecibels(double picofarads, double dissipation) => 20 * Math.Log10(Resistance(picofarads, dissipation) / Resistance(PeakPicofarads, 0));

    // What the level is in inverse proportion to.
    private double Resistance(double picofarads, double dissipation) => Law == ResponseLaw.Series
        ? Series(PeakPicofarads / picofarads / (1 + (dissipation * dissipation)), dissipation)
        : Shunt(picofarads / PeakPicofarads, dissipation);

    private double Series(double z, double dissipation) => Length((1 / Q) + (z * dissipation), 1 - z);

    // 1 + y (1 - jD)(jQ - Q²)/(1 + Q²), y = C/C*.
    private double Shunt(double y, double dissipation)
    {
        var share = y / (1 + (Q * Q));
        return Length(1 + (share * ((dissipation * Q) - (Q * Q))), share * (Q + (dissipation * Q * Q)));
    }

    private static double Length(double real, double imaginary) => Math.Sqrt((real * real) + (imaginary * imaginary));
}
