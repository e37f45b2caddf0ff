using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Parts;

namespace AutoSweep.Worker.Page.Intake;

/// <summary>Parts whose coming and going the page shows and lets hear.</summary>
/// <param name="source">Where they come from.</param>
/// <param name="board">The page's big state.</param>
public sealed class BoardedParts(IPartSource source, BenchBoard board) : IPartSource
{
    /// <inheritdoc/>
    public string? Meter => source.Meter;

    /// <summary>The parts that are asked for; empty where any will do.</summary>
    public IReadOnlyList<string> Asked { get; private set; } = [];

    /// <inheritdoc/>
    public Task AskForAsync(int output, IReadOnlyList<string> parts, CancellationToken cancellationToken)
    {
        Asked = parts;
        // Odd parts stay on the screen until the next ones are dealt with.
        board.Show(status => status with
        {
            Output = output,
            Activity = status.Activity == BenchActivity.NeedsYou && status.Output == output ? BenchActivity.NeedsYou : BenchActivity.Waiting,
        });
        return source.AskForAsync(output, parts, cancellationToken);
    }

    /// <inheritdoc/>
    public Task FinishAsync(CancellationToken cancellationToken)
    {
        Asked = [];
        board.Show(status => status with { Output = null, Activity = BenchActivity.Finished, Message = null });
        return source.FinishAsync(cancellationToken);
    }

    /// <inheritdoc/>
    public Task<MeasuredPart?> NextAsync(CancellationToken cancellationToken)
    {
        if (board.Status.Activity == BenchActivity.Connecting)
            board.Show(status => status with { Activity = BenchActivity.Waiting });
        return source.NextAsync(cancellationToken);
    }

    /// <inheritdoc/>
    public async Task SignalAsync(bool isFine, CancellationToken cancellationToken)
    {
        // The meter first: who sees "taken in" here and stops has heard it there.
        await source.SignalAsync(isFine, cancellationToken);
        board.Show(status => status with { Activity = isFine ? BenchActivity.Done : BenchActivity.NeedsYou, Message = null });
        board.Sound(isFine ? BenchSound.Done : BenchSound.Question);
    }
}
