using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>The shape of a tuned output's level over capacitance, as a share of the level at the peak.</summary>
/// <remarks>
/// Every linear network gives V = (a + bC)/(1 + gC), so V² is a ratio of two quadratics. Written about its peak C*, with
/// y = C/C* − 1: (V/V*)² = 1/(1 + Q²y²/N), N = 1 + 2·slope·y + curvature·y², where N is what the numerator does. Shunt law:
/// N = 1. Series law: N = (1 + y)². A trap at capacitance T, as deep as it can be: N = (1 + slope·y)² with slope = C*/(C* − T).
/// Derived in docs/peak-search.md; checked against ngspice and complex impedances in the tests.
/// </remarks>
/// <param name="PeakPicofarads">C*, where the level is highest; above 0.</param>
/// <param name="Q">C* over the half-power half-width of the shunt law with the same curvature at the peak; above 0.</param>
/// <param name="Slope">The relative slope of the numerator at the peak: 0 for shunt, 1 for series.</param>
/// <param name="Curvature">The numerator's second-order term; at least the square of <paramref name="Slope"/>.</param>
public readonly record struct TunedResponse(double PeakPicofarads, double Q, double Slope, double Curvature)
{
    /// <summary>The capacitor sits between pickup coil and winding: 1/V² is a parabola in 1/C.</summary>
    public static TunedResponse Series(double peakPicofarads, double q) => new(peakPicofarads, q, 1, 1);

    /// <summary>The level is taken across the capacitor: 1/V² is a parabola in C.</summary>
    public static TunedResponse Shunt(double peakPicofarads, double q) => new(peakPicofarads, q, 0, 0);

    /// <summary>Peak and trap, as a tap gives.</summary>
    /// <param name="peakPicofarads">The peak.</param>
    /// <param name="q">The Q of the peak's curvature.</param>
    /// <param name="trapPicofarads">Where the level would vanish but for losses; may be negative: no capacitor reaches it then.</param>
    public static TunedResponse Trapped(double peakPicofarads, double q, double trapPicofarads)
    {
        var slope = peakPicofarads / (peakPicofarads - trapPicofarads);
        return new(peakPicofarads, q, slope, slope * slope);
    }

    /// <summary>The level at a capacitance over the level at the peak, 0 to 1, squared (a ratio of powers).</summary>
    public double PowerRatio(double picofarads)
    {
        var y = picofarads / PeakPicofarads - 1;
        var numerator = Numerator(y);
        return numerator <= 0 ? 0 : numerator / (numerator + Q * Q * y * y);
    }

    /// <summary>The level at a capacitance over the level at the peak, 0 to 1.</summary>
    public double LevelRatio(Capacitance capacitance) => Math.Sqrt(PowerRatio(capacitance.Picofarads));

    /// <summary>The decibels lost by fitting this capacitance instead of the peak's; 0 or more.</summary>
    public double LossDecibels(double picofarads) => -10 * Math.Log10(PowerRatio(picofarads));

    /// <summary>Half the distance between the two capacitances at which the level is 3.01 dB down; not a number below a Q of about 1.</summary>
    public double HalfWidthPicofarads
    {
        get
        {
            var opening = Q * Q - Curvature;
            return opening > 0 ? PeakPicofarads * Math.Sqrt(Slope * Slope + opening) / opening : double.NaN;
        }
    }

    private double Numerator(double y) => 1 + y * (2 * Slope + Curvature * y);
}
