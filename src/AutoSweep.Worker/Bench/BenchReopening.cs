using AutoSweep.Core.Journal;
using AutoSweep.Instruments;
using AutoSweep.Worker.ByHand;
using Polly;

namespace AutoSweep.Worker.Bench;

/// <summary>Opens the instruments again after one was lost: tries for as long as it takes, and says what is missing.</summary>
/// <param name="wiring">How the bench is wired.</param>
/// <param name="needsFixture">Whether the stages to come need the fixture.</param>
/// <param name="options">Clock, log, time-outs.</param>
/// <param name="board">The screens.</param>
/// <param name="dialogue">The person, where the wiring says that one reads or dials.</param>
public sealed class BenchReopening(BenchWiring wiring, bool needsFixture, InstrumentBenchOptions options, BenchBoard board, IBenchDialogue dialogue)
{
    private readonly ResiliencePipeline<bool> _tries = Reopening.Tries(options.Time);

    /// <summary>Waits until every instrument is back and is the one of before.</summary>
    /// <param name="meterBefore">The meter of before. The fixture is known by its calibration.</param>
    /// <param name="missed">Takes every instrument that was missing on the way.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>The bench; owned by whoever asked.</returns>
    /// <exception cref="Core.BenchFaultException">A fault that waiting does not mend.</exception>
    public async Task<ConnectedBench> WaitAsync(
        InstrumentIdentity meterBefore, ISet<BenchInstrument> missed, CancellationToken cancellationToken)
    {
        await using var open = new HalfOpenBench(wiring, needsFixture, meterBefore, options, dialogue);
        await _tries.ExecuteAsync(async cancel => await IsWholeAsync(open, missed, cancel), cancellationToken);
        return open.Take();
    }

    private async ValueTask<bool> IsWholeAsync(HalfOpenBench open, ISet<BenchInstrument> missed, CancellationToken cancellationToken)
    {
        var missing = await open.OpenMissingAsync(cancellationToken);
        if (missing.Count == 0)
            return true;
        missed.UnionWith(missing.Select(one => one.Instrument));
        board.Show(status => status.Paused(missing));
        return false;
    }
}
