namespace AutoSweep.Worker.Bench;

/// <summary>What the person at the bench can press.</summary>
public enum OperatorKey
{
    /// <summary>The output is clipped: measure it.</summary>
    Go,

    /// <summary>Leave this output for later.</summary>
    Skip,

    /// <summary>Take the last result back.</summary>
    Undo,

    /// <summary>Stop here; the job can go on later.</summary>
    Stop,
}
