namespace AutoSweep.Sim.Benches;

/// <summary>The magnet rod before an output's wheel.</summary>
internal sealed record RodDefinition
{
    /// <summary>From its tip, as found, to the wheel's highest tooth, in millimetres; at 0 they touch, and the wheel is ruined.</summary>
    public required double GapMillimetres { get; init; }

    /// <summary>By how many decibels the level falls for each millimetre that the rod goes out: the field falls off exponentially.</summary>
    public required double DecibelsPerMillimetre { get; init; }

    /// <summary>The play that a change of direction takes up, in millimetres.</summary>
    public required double BacklashMillimetres { get; init; }

    /// <summary>How far locking its set screw shifts it, outward, in millimetres.</summary>
    public required double LockingMillimetres { get; init; }
}
