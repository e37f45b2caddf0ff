using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Levelling;

/// <summary>What came of an order to move a rod.</summary>
public abstract record MoveOutcome
{
    private MoveOutcome()
    {
    }

    /// <summary>The rod is locked again; the level is the new one.</summary>
    /// <param name="Level">The level, read for good.</param>
    public sealed record Moved(LevelSample Level) : MoveOutcome;

    /// <summary>The clip came off.</summary>
    public sealed record ClipGone : MoveOutcome;

    /// <summary>The person leaves this output as it is.</summary>
    public sealed record Skipped : MoveOutcome;

    /// <summary>The person takes the last reading back.</summary>
    public sealed record Undone : MoveOutcome;
}
