using AutoSweep.Core.Stock;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Parts;

namespace AutoSweep.Worker.Page.Intake;

/// <summary>Parts come into the stock as they are measured.</summary>
/// <param name="wiring">The bench; none where nothing is wired.</param>
/// <param name="label">What is printed on the parts.</param>
/// <param name="options">How parts are measured.</param>
/// <param name="desk">Where the stock is, and the bench's clock.</param>
/// <param name="clock">The wall clock.</param>
public sealed class TakingIn(BenchWiring? wiring, IntakeLabel label, PartOptions options, DeskOptions desk, TimeProvider clock)
    : PartWork(wiring, options, desk, clock)
{
    private readonly TimeProvider _clock = clock;
    // None until the work has begun: nothing has come in before.
    private long? _before;

    /// <inheritdoc/>
    public override string Name => "Parts come in";

    /// <inheritdoc/>
    public override string? Place => "stock";

    /// <summary>What is printed on them.</summary>
    public IntakeLabel Label => label;

    /// <summary>The parts that came in since the work began and were not taken back, the latest last.</summary>
    public IReadOnlyList<Part> Taken(StockState stock) => _before is not { } before ? [] : [.. stock.Entries
        .SkipWhile(entry => entry.Sequence <= before)
        .Where(entry => !stock.Idle.Contains(entry.Sequence))
        .SelectMany(entry => entry.Event is PartsTakenIn taken ? taken.Parts : [])];

    private protected override async Task WorkAsync(IPartSource parts, CancellationToken cancellationToken)
    {
        _before = Ledger.Read().Sequence;
        await new PartIntake(parts, Ledger, label, Lines, _clock).RunAsync(null, cancellationToken);
    }
}
