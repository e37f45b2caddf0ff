using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>One reading of the level at one capacitance, as a search is told it.</summary>
/// <param name="Capacitance">The calibrated total that was in circuit, stray included; not the dial's value.</param>
/// <param name="Level">The level read, hum included.</param>
/// <param name="RelativeNoise">
/// One standard deviation of the reading as a share of the level (0.005 is half a per cent); 0 or more. No reading is trusted beyond 0.02 %.
/// </param>
/// <param name="At">When it was read, since the search began; takes slow drift out of the fit.</param>
/// <param name="Settled">False when the meter's samples still moved: such a reading is kept in the trace but never fitted.</param>
public sealed record PeakReading(Capacitance Capacitance, Level Level, double RelativeNoise, TimeSpan At, bool Settled = true);
