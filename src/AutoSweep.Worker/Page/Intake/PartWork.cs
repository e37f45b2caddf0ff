using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Parts;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Page.Intake;

/// <summary>Work with measured parts: at the capacitance meter's clips, or typed.</summary>
/// <param name="wiring">The bench; none where nothing is wired.</param>
/// <param name="options">How parts are measured.</param>
/// <param name="desk">Where the stock is, and the bench's clock.</param>
/// <param name="clock">The wall clock.</param>
public abstract class PartWork(BenchWiring? wiring, PartOptions options, DeskOptions desk, TimeProvider clock) : DeskWork
{
    /// <summary>The stock.</summary>
    public StockLedger Ledger { get; } = new(desk.Ledger, clock);

    /// <summary>Whether a person types.</summary>
    public bool IsTyped => options.IsTyped || wiring?.CapacitanceMeter is null;

    /// <summary>The parts that are asked for; empty where any will do.</summary>
    public IReadOnlyList<string> Asked => Parts?.Asked ?? [];

    /// <summary>Where the work writes its lines.</summary>
    private protected DialogueLines Lines => new(Dialogue);

    private BoardedParts? Parts { get; set; }

    /// <inheritdoc/>
    protected sealed override async Task WorkAsync(CancellationToken cancellationToken)
    {
        await using var bench = IsTyped
            ? new PartBench(null, new AskedParts(Dialogue, options.AccuracyPercent / 100))
            : await PartBench.OpenAsync(wiring!, 0, desk.ClockRate, new BoardedGap(Board), cancellationToken);
        Parts = new(bench.Parts, Board);
        await WorkAsync(Parts, cancellationToken);
        Board.Show(status => status with { Activity = BenchActivity.Finished });
    }

    /// <summary>Does the work with the parts as they come.</summary>
    private protected abstract Task WorkAsync(IPartSource parts, CancellationToken cancellationToken);
}
