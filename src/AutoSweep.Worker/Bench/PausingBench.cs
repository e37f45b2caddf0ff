using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Instruments;
using AutoSweep.Worker.ByHand;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Bench;

/// <summary>A bench that outlives unplugging: an instrument that is lost in the middle of the work pauses it, and it goes on when that is back.</summary>
/// <remarks>
/// At the beginning an instrument that is not there is a fault, because a wrong resource name would be waited for without end. Between two
/// benches the relays are open, as far as the fixture can be reached; its watchdog opens them otherwise.
/// </remarks>
/// <param name="plan">What to do.</param>
/// <param name="record">The job.</param>
/// <param name="board">The screens.</param>
/// <param name="options">Clock, log, time-outs.</param>
/// <param name="dialogue">The person, where the wiring says that one reads or dials.</param>
public sealed class PausingBench(JobPlan plan, JobRecord record, BenchBoard board, InstrumentBenchOptions options, IBenchDialogue dialogue)
{
    // Twelve places on a display. Whoever hears two beeps looks there first, and must not take the clip off.
    private const string Wait = "WAIT";
    private const string GoOn = "GO ON";

    private readonly LossRule _rule = new(plan);
    private readonly HashSet<BenchInstrument> _missed = [];
    private int? _broken;

    private bool NeedsFixture => plan.Stages.Contains(JobStage.Sweep);

    /// <summary>Opens the bench and works at it; after a gap the work is begun again and must go on by what the journal knows.</summary>
    /// <param name="work">The work.</param>
    /// <param name="cancellationToken">Ends the work or the wait.</param>
    /// <exception cref="BenchFaultException">A fault that waiting does not mend, or any at the first opening, unless the plan waits for its bench.</exception>
    public async Task RunAsync(Func<ConnectedBench, CancellationToken, Task> work, CancellationToken cancellationToken)
    {
        var reopening = new BenchReopening(plan.Wiring, NeedsFixture, options, board, dialogue);
        record.Appended += _rule.Note;
        try
        {
            var bench = plan.WaitsForBench
                ? await new BenchWait(board, options.Time).OpenAsync(plan.Wiring, OpenAsync, cancellationToken)
                : await OpenAsync(cancellationToken);
            while (!await IsDoneAsync(bench, work, cancellationToken))
                bench = await reopening.WaitAsync(bench.Meter.Identity, _missed, cancellationToken);
        }
        finally
        {
            record.Appended -= _rule.Note;
        }
    }

    private Task<ConnectedBench> OpenAsync(CancellationToken cancellationToken) =>
        ConnectedBench.OpenAsync(plan.Wiring, NeedsFixture, options, dialogue, cancellationToken);

    private async Task<bool> IsDoneAsync(ConnectedBench bench, Func<ConnectedBench, CancellationToken, Task> work, CancellationToken cancellationToken)
    {
        await using (bench)
        {
            try
            {
                record.Append(bench.Describe());
                await WelcomeAsync(bench, cancellationToken);
                await work(bench, cancellationToken);
                return true;
            }
            catch (BenchFaultException fault) when (fault.LostResource is not null)
            {
                if (_rule.Lost(fault) is not { } lost)
                    throw;
                await PauseAsync(bench, lost, cancellationToken);
                return false;
            }
        }
    }

    private async Task PauseAsync(ConnectedBench bench, MissingInstrument lost, CancellationToken cancellationToken)
    {
        _broken = record.State.InHand?.Output;
        _missed.Add(lost.Instrument);
        record.Append(new InstrumentLost(lost.Instrument, lost.Resource, lost.Fault.Found));
        board.Show(status => status.Paused([lost]));
        if (lost.Instrument == BenchInstrument.Meter)
            board.Sound(BenchSound.Question);
        else
            await CallAsync(bench, lost.Instrument, cancellationToken);
    }

    private async Task CallAsync(ConnectedBench bench, BenchInstrument lost, CancellationToken cancellationToken)
    {
        try
        {
            await bench.Meter.ShowAsync($"{Wait} {MissingWords.Name(lost).ToUpperInvariant()}", cancellationToken);
            await new BenchSignals(bench, board).QuestionAsync(cancellationToken);
        }
        catch (BenchFaultException)
        {
            // The meter went with the fixture; opening it again will say so.
        }
    }

    private async Task WelcomeAsync(ConnectedBench bench, CancellationToken cancellationToken)
    {
        if (_missed.Count == 0)
            return;
        var words = MissingWords.Back(_missed, _broken);
        board.Show(status => status with { Activity = BenchActivity.Waiting, Missing = [], Message = words });
        _missed.Clear(); // first: the meter may be gone again already, and the next gap has its own list
        await bench.Meter.ShowAsync(GoOn, cancellationToken);
    }
}
