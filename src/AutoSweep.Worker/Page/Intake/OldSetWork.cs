using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Parts;

namespace AutoSweep.Worker.Page.Intake;

/// <summary>The capacitors that came off are read at the capacitance meter's clips, or typed one after the other.</summary>
/// <param name="wiring">The bench; none where nothing is wired.</param>
/// <param name="set">Which job's, of which outputs, and what is known of them all.</param>
/// <param name="options">How they are measured.</param>
/// <param name="desk">Where the stock is, and the bench's clock.</param>
/// <param name="clock">The wall clock.</param>
public sealed class OldSetWork(BenchWiring? wiring, OldSetWork.OldSet set, PartOptions options, DeskOptions desk, TimeProvider clock)
    : PartWork(wiring, options, desk, clock)
{
    private readonly OldSetWords _words = new();
    private readonly TimeProvider _clock = clock;

    /// <summary>An old set.</summary>
    /// <param name="Job">The job's name in the ledger.</param>
    /// <param name="Outputs">The outputs that had a capacitor, in the order of work.</param>
    /// <param name="Label">What is known of them all.</param>
    public sealed record OldSet(string Job, IReadOnlyList<int> Outputs, OldSetLabel Label);

    /// <inheritdoc/>
    public override string Name => "Old capacitors are read";

    /// <inheritdoc/>
    public override string? Place => "stock";

    /// <summary>The output whose capacitor is asked for; none before the first and after the last.</summary>
    public int? Output => Board.Status.Output;

    /// <summary>Says something of the capacitor that is asked for.</summary>
    /// <param name="output">The output that the screen was asking for; a word on one that is dealt with, as from a second press, does nothing.</param>
    /// <param name="word">What is said.</param>
    public void Say(int output, OldSetWord word) => _words.Say(output, word);

    private protected override Task WorkAsync(IPartSource parts, CancellationToken cancellationToken) =>
        new OldSetReading(parts, Ledger, set.Job, set.Outputs, set.Label, _words, Lines, _clock).RunAsync(cancellationToken);
}
