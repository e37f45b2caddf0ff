namespace AutoSweep.Core.Calibration;

/// <summary>One set of relays, measured again.</summary>
/// <param name="Closed">The relays; bit 0 is relay 1.</param>
/// <param name="ExpectedPicofarads">What the calibration says it makes.</param>
/// <param name="MeasuredPicofarads">What it measures now.</param>
/// <param name="LimitPicofarads">How far the two may differ: twice the standard uncertainty of their difference.</param>
public sealed record CheckedPoint(uint Closed, double ExpectedPicofarads, double MeasuredPicofarads, double LimitPicofarads)
{
    /// <summary>Measured less expected.</summary>
    public double DifferencePicofarads => MeasuredPicofarads - ExpectedPicofarads;

    /// <summary>Whether the calibration holds here.</summary>
    public bool Holds => Math.Abs(DifferencePicofarads) <= LimitPicofarads;
}
