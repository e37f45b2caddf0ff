namespace AutoSweep.Sources.Magnets;

/// <summary>What a simulated rod is.</summary>
public sealed record RodTruth
{
    /// <summary>Teeth of its wheel.</summary>
    public required int WheelTeeth { get; init; }

    /// <summary>What a millimetre changes the level by, in decibels.</summary>
    public required double DecibelsPerMillimetre { get; init; }

    /// <summary>The mean gap as found, in millimetres.</summary>
    public required double GapMillimetres { get; init; }

    /// <summary>The level over its target as found, in decibels.</summary>
    public required double StartDecibels { get; init; }

    /// <summary>The level's swing at the wheel's turns as a share, peak.</summary>
    public required double WobbleShare { get; init; }

    /// <summary>The play that a change of direction takes up.</summary>
    public required double BacklashMillimetres { get; init; }

    /// <summary>How far locking always shifts this rod, outward.</summary>
    public required double LockingMillimetres { get; init; }

    /// <summary>Whether it does not move at all.</summary>
    public bool IsStuck { get; init; }

    /// <summary>How much nearer the wheel's highest tooth comes than its mean: what makes the wobble (share = slope times run-out).</summary>
    public double RunOutMillimetres => 8.685889638 * WobbleShare / DecibelsPerMillimetre;

    /// <summary>The thickest leaf of a feeler gauge, in steps of 0.05 mm, that passes at the highest tooth.</summary>
    public double LeafMillimetres => Math.Floor((GapMillimetres - RunOutMillimetres) / 0.05) * 0.05;

    /// <summary>Whether the target can be reached with a gap left at the highest tooth.</summary>
    public bool CanBeReached(double leaving) => GapMillimetres - RunOutMillimetres + (StartDecibels / DecibelsPerMillimetre) >= leaving;
}
