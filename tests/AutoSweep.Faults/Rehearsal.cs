using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Instruments.Meters;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Physics;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Faults;

/// <summary>A survey and a sweep of a simulated bench by the worker's own stages, hands-free, without wires and without waiting.</summary>
internal sealed class Rehearsal : IDisposable
{
    private static readonly MeterDriver Driver = DriverLibrary.BesideProgram.Read("scpi-dmm");

    private readonly JumpingClock clock = new();
    private readonly JobRecord record;
    private readonly ConnectedBench bench;
    private readonly BenchBoard board = new();
    private readonly BenchSignals signals;
    private readonly LevelReader levels;
    private readonly QuickHands hands;

    public Rehearsal(BenchDefinition definition, CalibrationSheet sheet, GeneratorProfile profile)
    {
        var simulated = new SimulatedBench(definition, profile, new SimulatedClock(1, clock));
        hands = new(simulated, definition.Hands, clock, definition.Seed + 2);
        record = JobRecord.Rehearse(profile, "rehearsal", clock);
        bench = new(new() { AmplifierGain = definition.FrontEnd.Gain }, new QuickMeter(definition.Meter, Driver, simulated, clock, hands.Hear),
            new QuickFixture(sheet, simulated, clock));
        signals = new(bench, board);
        levels = new(bench, new(), clock, NullLogger<LevelReader>.Instance);
    }

    public async Task<JobState> RunAsync()
    {
        var clips = Clips();
        await RunAsync(new SurveyStage(bench, levels, record, board, signals, new(), clock), clips);
        await RunAsync(new SweepStage(bench, clips, levels, record, board, signals, clock), clips);
        return record.State;
    }

    public void Dispose() => record.Dispose();

    private async Task RunAsync(IBenchStage stage, ClipWatch clips)
    {
        record.Append(new StageStarted(stage.Stage, stage.Plan));
        hands.Begin(stage.Stage == JobStage.Sweep);
        await stage.RestAsync(CancellationToken.None);
        while (record.State.Missing(stage.Stage).Any())
            await stage.WorkAsync(await clips.NextAsync(stage.Stage, CancellationToken.None), CancellationToken.None);
        record.Append(new StageEnded(stage.Stage));
    }

    private ClipWatch Clips()
    {
        var options = new ClipWatchOptions();
        return new(
            new(bench, levels, record, options, NullLogger<ToneWatch>.Instance), new(bench, levels, record, clock), levels, record,
            new(record, board, signals), options, clock);
    }
}
