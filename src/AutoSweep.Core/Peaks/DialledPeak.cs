using AutoSweep.Core.Decades;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>What a search by hand is worth in true picofarads: the box measured as it stood, or its tolerance.</summary>
public static class DialledPeak
{
    // 95 % of a normal distribution.
    private const double Coverage = 1.96;

    /// <summary>The answer when the box was measured on the capacitance meter as it stood at the end.</summary>
    /// <param name="result">The search's answer, in what the dials say.</param>
    /// <param name="dialled">What the dials said.</param>
    /// <param name="measured">What the meter showed, leads and all.</param>
    /// <param name="sdPicofarads">One standard deviation of that, the meter's gain left out: the parts are measured on the same meter.</param>
    public static PeakResult Measured(PeakResult result, Capacitance dialled, Capacitance measured, double sdPicofarads)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Peak is { } peak ? With(result, peak + measured - dialled, sdPicofarads) : result;
    }

    /// <summary>The answer when nobody measured: the box's own uncertainty is in it.</summary>
    /// <param name="result">The search's answer, in what the dials say.</param>
    /// <param name="box">The box.</param>
    public static PeakResult Unmeasured(PeakResult result, DecadeBox box)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(box);
        return result.Peak is { } peak ? With(result, peak, box.Sd(box.Nearest(peak.Picofarads))) : result;
    }

    private static PeakResult With(PeakResult result, Capacitance peak, double sd)
    {
        var variance = (result.PeakSdPicofarads * result.PeakSdPicofarads) + (sd * sd);
        var share = variance / (result.HalfWidthPicofarads * result.HalfWidthPicofarads);
        return result with
        {
            Peak = peak,
            PeakSdPicofarads = Math.Sqrt(variance),
            LossBoundDecibels = double.IsNaN(share) ? result.LossBoundDecibels : 10 * Math.Log10(1 + (Coverage * Coverage * share)),
        };
    }
}
