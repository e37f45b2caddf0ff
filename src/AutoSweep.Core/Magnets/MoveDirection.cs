namespace AutoSweep.Core.Magnets;

/// <summary>Which way a magnet rod goes.</summary>
public enum MoveDirection
{
    /// <summary>Away from the wheel: softer, and always safe for the wheel.</summary>
    Out,

    /// <summary>Towards the wheel: louder.</summary>
    In,
}
