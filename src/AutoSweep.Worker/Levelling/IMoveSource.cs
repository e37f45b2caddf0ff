using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Levelling;

/// <summary>Tells when a rod that was to be moved has been moved and locked.</summary>
public interface IMoveSource
{
    /// <summary>Waits for the move.</summary>
    /// <param name="before">The level before it.</param>
    /// <param name="live">Shows the level as it stands, many times.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    Task<MoveOutcome> WaitAsync(LevelSample before, Action<LevelSample> live, CancellationToken cancellationToken);
}
