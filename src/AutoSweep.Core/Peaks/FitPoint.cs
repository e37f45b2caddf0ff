namespace AutoSweep.Core.Peaks;

/// <summary>A reading as the fit sees it.</summary>
/// <param name="Picofarads">The calibrated capacitance.</param>
/// <param name="LogLevel">Natural logarithm of the level in volts: relative noise is then the same size everywhere.</param>
/// <param name="Sd">One standard deviation of <paramref name="LogLevel"/>.</param>
/// <param name="Minutes">When it was read.</param>
internal readonly record struct FitPoint(double Picofarads, double LogLevel, double Sd, double Minutes);
