namespace AutoSweep.Worker.Bench;

/// <summary>Signals to the person at the bench: the meter's own beeper, and whatever screens are open.</summary>
/// <param name="bench">The bench, whose meter beeps.</param>
/// <param name="board">The board that screens watch.</param>
public sealed class BenchSignals(ConnectedBench bench, BenchBoard board)
{
    /// <summary>"Done: next one please": one beep.</summary>
    public async Task DoneAsync(CancellationToken cancellationToken)
    {
        board.Sound(BenchSound.Done);
        await bench.Meter.BeepAsync(cancellationToken);
    }

    /// <summary>"Something is odd: please look": two beeps.</summary>
    public async Task QuestionAsync(CancellationToken cancellationToken)
    {
        board.Sound(BenchSound.Question);
        await bench.Meter.BeepAsync(cancellationToken);
        await bench.Meter.BeepAsync(cancellationToken);
    }
}
