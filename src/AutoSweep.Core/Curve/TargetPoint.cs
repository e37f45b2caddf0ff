namespace AutoSweep.Core.Curve;

/// <summary>What a target curve asks of one output.</summary>
/// <param name="Output">The output's number.</param>
/// <param name="Millivolts">The level in millivolts rms; of a curve that is a shape only, any one value stands for 0 dB.</param>
/// <param name="ToleranceDecibels">How far the level may be off to either side, in decibels; above 0.</param>
public sealed record TargetPoint(int Output, double Millivolts, double ToleranceDecibels)
{
    /// <summary>The smallest tolerance that is believed: a tenth of what an ear notices, and about what a meter repeats to.</summary>
    public const double LeastToleranceDecibels = 0.1;

    /// <summary>The largest tolerance that is believed; more asks for nothing.</summary>
    public const double MostToleranceDecibels = 20;
}
