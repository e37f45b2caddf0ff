using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Page.Intake;

/// <summary>Shows on the page, and lets hear, that the capacitance meter is missing; what stood there before comes back with it.</summary>
/// <param name="board">The page's big state.</param>
public sealed class BoardedGap(BenchBoard board) : IGapTeller
{
    private BenchActivity _before;

    /// <inheritdoc/>
    public void Missing(string words)
    {
        _before = board.Status.Activity;
        StillMissing(words);
        board.Sound(BenchSound.Question);
    }

    /// <inheritdoc/>
    public void StillMissing(string words) => board.Show(status => status with { Activity = BenchActivity.Paused, Message = words });

    /// <inheritdoc/>
    public void Back(string words) => board.Show(status => status with { Activity = _before, Message = words });
}
