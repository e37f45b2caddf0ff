namespace AutoSweep.Core.Curve;

/// <summary>One output's level on a level curve.</summary>
/// <param name="Output">The output's number.</param>
/// <param name="Millivolts">The level in millivolts rms at the terminal; 0 for a dead output.</param>
/// <param name="RelativeUncertainty">One standard deviation of it as a share of the level: noise and meter together.</param>
public sealed record LevelPoint(int Output, double Millivolts, double RelativeUncertainty)
{
    // Three standard deviations above nothing: the usual limit of detection (IUPAC, Compendium of Chemical Terminology, "limit of detection", k = 3).
    internal const double DetectionLimit = 1.0 / 3;

    /// <summary>Whether there is a level at all: it stands out of its own uncertainty. A dead output reads noise, and decibels of noise say nothing.</summary>
    public bool IsDetected => Millivolts > 0 && RelativeUncertainty < DetectionLimit;
}
