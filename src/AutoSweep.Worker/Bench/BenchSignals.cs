using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Bench;

/// <summary>Signals to the person at the bench: the meter's own beeper, and whatever screens are open.</summary>
/// <param name="bench">The bench, whose meter beeps.</param>
/// <param name="board">The board that screens watch.</param>
public sealed class BenchSignals(ConnectedBench bench, BenchBoard board)
{
    /// <summary>"I know what you have clipped": heard from the screens only. Whoever pressed a key for it knows without.</summary>
    public void Recognised(ClippedOutput clipped)
    {
        if (clipped.By != RecognisedBy.Person)
            board.Sound(BenchSound.Recognised);
    }

    /// <summary>"Done: next one please": one beep.</summary>
    public async Task DoneAsync(CancellationToken cancellationToken)
    {
        board.Sound(BenchSound.Done);
        await bench.Meter.BeepAsync(cancellationToken);
    }

    /// <summary>"Something is odd: please look": two beeps.</summary>
    public Task QuestionAsync(CancellationToken cancellationToken) => CallAsync(BenchSound.Question, cancellationToken);

    /// <summary>"Not this one": two beeps from the meter, which has no others; a sound of its own from the screens.</summary>
    public Task WrongOutputAsync(CancellationToken cancellationToken) => CallAsync(BenchSound.WrongOutput, cancellationToken);

    private async Task CallAsync(BenchSound sound, CancellationToken cancellationToken)
    {
        board.Sound(sound);
        await bench.Meter.BeepAsync(cancellationToken);
        await bench.Meter.BeepAsync(cancellationToken);
    }
}
