using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Levelling;

/// <summary>Goes by the person's keys: Enter, or a foot pedal, when the rod is locked.</summary>
/// <param name="keys">The keys.</param>
/// <param name="levels">Reads levels.</param>
/// <param name="options">How a reading is taken.</param>
public sealed class KeyedMoves(IOperatorKeys keys, LevelReader levels, LevellingOptions options) : IMoveSource
{
    /// <inheritdoc/>
    public async Task<MoveOutcome> WaitAsync(LevelSample before, Action<LevelSample> live, CancellationToken cancellationToken) =>
        await keys.ReadAsync(cancellationToken) switch
        {
            OperatorKey.Go => new MoveOutcome.Moved(await levels.ReadAsync(cancellationToken, options.Samples, options.Span)),
            OperatorKey.Skip => new MoveOutcome.Skipped(),
            OperatorKey.Undo => new MoveOutcome.Undone(),
            _ => throw new OperationCanceledException("The person at the bench stopped the stage."),
        };
}
