using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Instruments;
using AutoSweep.Worker.ByHand;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Levelling;
using AutoSweep.Worker.Reports;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Worker.Bench;

/// <summary>The hosted worker: connects the bench, works through the plan's stages, and leaves the bench safe whatever happens.</summary>
/// <param name="plan">What to do.</param>
/// <param name="record">The job.</param>
/// <param name="board">The screens.</param>
/// <param name="keys">The person's keys, for a stage that goes step by step.</param>
/// <param name="dialogue">The person, where one dials or types levels.</param>
/// <param name="outcome">Where the ending is told.</param>
/// <param name="lifetime">Stops the host when the work is done.</param>
/// <param name="logs">The log.</param>
public sealed class JobWorker(
    JobPlan plan,
    JobRecord record,
    BenchBoard board,
    IOperatorKeys keys,
    IBenchDialogue dialogue,
    JobOutcome outcome,
    IHostApplicationLifetime lifetime,
    ILoggerFactory logs) : BackgroundService
{
    // A cable that was pulled is noticed before the person has sat down (bench practice, no source).
    private static readonly TimeSpan Heartbeat = TimeSpan.FromSeconds(10);

    private readonly ILogger _log = logs.CreateLogger<JobWorker>();
    private readonly TimeProvider _clock = RatedInstruments.Clock(plan.ClockRate);
    private int _stagesDone;

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            await WorkAsync(stoppingToken);
            outcome.Completed();
        }
        catch (BenchFaultException fault)
        {
            _log.LogError(fault, "The job stopped");
            outcome.Failed(fault);
        }
        catch (OperationCanceledException)
        {
            // Keeping the bench connected until told to stop is the whole of a plan without stages.
            if (plan.Stages.Count == 0)
                outcome.Completed();
            else
                outcome.Stopped();
        }
        catch (Exception fault)
        {
            _log.LogCritical(fault, "A fault that nobody foresaw");
            outcome.Failed(fault);
        }
        finally
        {
            // A record can outlive the worker: the bench page runs one stage after the other on it.
            record.Appended -= KeepFilesCurrent;
        }

        lifetime.StopApplication();
    }

    private async Task WorkAsync(CancellationToken cancellationToken)
    {
        if (plan.HandsFree && !IsHandsFree)
            dialogue.Tell("  >> Somebody dials or types on this bench, so outputs are asked for one by one: --hands-free is not used.");
        record.Appended += KeepFilesCurrent;
        await new PausingBench(plan, record, board, RatedInstruments.Options(plan.ClockRate, _clock, logs, plan.Wiring.Drivers), dialogue).RunAsync(WorkAtAsync, cancellationToken);
        board.Show(status => status with { Activity = BenchActivity.Finished, Output = null, Next = null, Message = null });
    }

    // After a gap the stage that was broken off begins again, as after a stop: with what is still missing, and nothing carried over but the journal.
    private async Task WorkAtAsync(ConnectedBench bench, CancellationToken cancellationToken)
    {
        if (plan.Stages.Count == 0)
            await KeepAsync(bench, cancellationToken);
        foreach (var stage in Stages(bench, plan.Stages.Skip(_stagesDone)))
        {
            await RunAsync(stage, cancellationToken);
            _stagesDone++;
        }
    }

    // Before the beep that says "done": who looks at the files then finds the output in them.
    private void KeepFilesCurrent(JournalEntry entry)
    {
        if (entry.Event is OutputSurveyed or OutputSwept or OutputChecked or OutputLevelled or EntryWithdrawn)
            ResultFiles.Write(record);
    }

    // Nothing to measure: the bench stays connected, and an instrument that has gone is noticed.
    private async Task KeepAsync(ConnectedBench bench, CancellationToken cancellationToken)
    {
        board.Show(status => status with { Activity = BenchActivity.Waiting, Message = "The bench is connected; nothing is measured. Ctrl-C, or the service manager, ends it." });
        using var heartbeat = new PeriodicTimer(Heartbeat, _clock);
        while (await heartbeat.WaitForNextTickAsync(cancellationToken))
        {
            if (!plan.Wiring.IsReadByEye)
                await bench.Meter.ReadLevelAsync(cancellationToken);
            if (bench.HasFixture && !plan.Wiring.IsDialledByHand)
                await bench.Fixture.OpenAllAsync(cancellationToken);
        }
    }

    private async Task RunAsync((IBenchStage Stage, IClipSource Clips) work, CancellationToken cancellationToken)
    {
        var (stage, clips) = work;
        record.Append(new StageStarted(stage.Stage, stage.Plan));
        ResultFiles.Write(record);
        board.Show(status => status with { Output = null, ToneHertz = null, Readings = [], Fit = null });
        await stage.RestAsync(cancellationToken);
        while (record.State.Missing(stage.Stage).Any())
        {
            board.Show(status => Waiting(status, stage.Stage));
            await stage.WorkAsync(await clips.NextAsync(stage.Stage, cancellationToken), cancellationToken);
        }

        record.Append(new StageEnded(stage.Stage));
        ResultFiles.Write(record);
    }

    // What the person must still do stays on the screen until the next clip; a result of the last output does too.
    private BenchStatus Waiting(BenchStatus status, JobStage stage) => status with
    {
        Activity = status switch
        {
            { Activity: BenchActivity.NeedsYou } => BenchActivity.NeedsYou,
            { Output: null } => BenchActivity.Waiting,
            _ => BenchActivity.Done,
        },
        Stage = stage,
        Next = ClippingOrder.Next(record.State, stage) ?? record.State.Missing(stage).Select(output => (int?)output).FirstOrDefault(),
    };

    private IEnumerable<(IBenchStage Stage, IClipSource Clips)> Stages(ConnectedBench bench, IEnumerable<JobStage> stages)
    {
        var signals = new BenchSignals(bench, board);
        var levels = new LevelReader(bench, new(), _clock, logs.CreateLogger<LevelReader>());
        var clips = Clips(bench, levels, signals);
        return stages.Select(stage => (stage switch
        {
            JobStage.Survey or JobStage.AsLeft => (IBenchStage)new SurveyStage(bench, levels, record, board, signals, new(), _clock, stage),
            JobStage.Check => new CheckStage(bench, levels, record, board, signals),
            JobStage.Level => new LevellingStage(bench, levels, Moves(levels), record, board, signals, plan.Levelling),
            _ => new SweepStage(bench, clips, levels, record, board, signals, _clock),
        }, clips));
    }

    // An eye counts no tone, and a hunt for a level would be dialled by hand.
    private bool IsHandsFree => plan is { HandsFree: true, Wiring.IsTyped: false };

    private IMoveSource Moves(LevelReader levels) =>
        IsHandsFree ? new SettledMoves(levels, plan.Levelling, _clock) : new KeyedMoves(keys, levels, plan.Levelling);

    private IClipSource Clips(ConnectedBench bench, LevelReader levels, BenchSignals signals)
    {
        if (!IsHandsFree)
            return new StepByStepClips(keys, record, board);
        var options = new ClipWatchOptions();
        return new ClipWatch(
            new ToneWatch(bench, levels, record, options, logs.CreateLogger<ToneWatch>()),
            new LevelHunt(bench, levels, record, _clock),
            levels,
            record,
            new ClipQuestions(record, board, signals),
            options,
            _clock);
    }
}
