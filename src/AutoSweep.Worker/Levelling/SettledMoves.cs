using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Levelling;

/// <summary>Notices moves hands-free, by the level alone: it moves, and then it stands still.</summary>
/// <param name="levels">Reads levels.</param>
/// <param name="options">When a level counts as moved and as standing still.</param>
/// <param name="clock">The bench's clock.</param>
public sealed class SettledMoves(LevelReader levels, LevellingOptions options, TimeProvider clock) : IMoveSource
{
    /// <inheritdoc/>
    public async Task<MoveOutcome> WaitAsync(LevelSample before, Action<LevelSample> live, CancellationToken cancellationToken)
    {
        var began = clock.GetTimestamp();
        var (last, still, departed, gone) = (before, began, false, 0);
        while (true)
        {
            var now = await levels.ReadAsync(cancellationToken);
            live(now);
            gone = IsGone(before, now) ? gone + 1 : 0;
            if (gone == 2)
                return new MoveOutcome.ClipGone();
            departed |= Differ(before, now);
            if (Differ(last, now) || !now.Settled)
                still = clock.GetTimestamp();
            last = now;
            // A rod that was told to move and is not heard to is read all the same: that is news too.
            if (gone == 0 && clock.GetElapsedTime(departed ? still : began) > (departed ? options.Rest : options.Patience))
                return new MoveOutcome.Moved(await levels.ReadAsync(cancellationToken, options.Samples, options.Span));
        }
    }

    private bool IsGone(LevelSample before, LevelSample now) =>
        now.Mean.Volts < before.Mean.Volts * Math.Pow(10, -options.ClipGoneDecibels / 20);

    // Four standard deviations: once in 16,000 pairs of readings of a tone that stands still (normal distribution).
    private bool Differ(LevelSample one, LevelSample other) => Math.Abs(20 * Math.Log10(other.Mean.Volts / one.Mean.Volts))
        > Math.Max(4 * LevelDecibels.Sd(one, other), options.LeastChangeDecibels);
}
