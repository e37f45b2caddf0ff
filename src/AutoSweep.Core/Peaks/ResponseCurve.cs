using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>A tuned output's level over capacitance, hum included: the curve that a chart draws through the readings.</summary>
/// <param name="Response">The shape.</param>
/// <param name="LevelAtPeak">The tone's own level at the peak.</param>
/// <param name="Hum">What adds to it in quadrature at every capacitance.</param>
public sealed record ResponseCurve(TunedResponse Response, Level LevelAtPeak, Level Hum)
{
    /// <summary>The level that a true-rms meter reads at a capacitance.</summary>
    public Level LevelAt(Capacitance capacitance)
    {
        var tone = LevelAtPeak.Volts * LevelAtPeak.Volts * Response.PowerRatio(capacitance.Picofarads);
        return new(Math.Sqrt(tone + Hum.Volts * Hum.Volts));
    }
}
