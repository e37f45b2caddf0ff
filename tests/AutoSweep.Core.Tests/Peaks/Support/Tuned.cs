namespace AutoSweep.Core.Tests.Peaks.Support;

/// <summary>Tuned outputs from their networks' complex voltage, written out by hand so that no formula is shared with the product.</summary>
internal static class Tuned
{
    /// <summary>Volts of 5 mV at the peak, the level taken across the capacitor: V = E/(1 − C/C0 + j·C/(C0·Q)).</summary>
    internal static double Shunt(double nanofarads, double peakNanofarads, double q)
    {
        // |1 - x + jx/q| is smallest at x = 1/(1 + 1/q²), where it is (1/q)/sqrt(1 + 1/q²).
        var x = nanofarads / peakNanofarads / (1 + 1 / (q * q));
        return 5e-3 * (1 / q / Math.Sqrt(1 + 1 / (q * q))) / Math.Sqrt((1 - x) * (1 - x) + x * x / (q * q));
    }

    /// <summary>Volts of 5 mV at the peak, the capacitor in series: V = A/(R + j(X − 1/ωC)).</summary>
    internal static double Series(double nanofarads, double peakNanofarads, double q) =>
        5e-3 / Math.Sqrt(1 + q * q * Math.Pow(1 - peakNanofarads / nanofarads, 2));
}
