using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Links;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

/// <summary>A meter behind VISA that is lost in the middle of the work, with the fault that every link gives.</summary>
public sealed class PausingBenchTests : IDisposable
{
    private const string Meter = "GPIB0::22::INSTR";
    private const string Identity = "Invented,Meter,77,1.0";

    // Longer than any other wait here.
    private static readonly TimeSpan QueryTimeout = TimeSpan.FromSeconds(30);

    private readonly BenchScene _scene = new();
    private readonly TimerSignals _clock = new() { Answers = QueryTimeout };
    private readonly Queue<Func<ILink>> _openings = [];
    private readonly List<string> _said = [];
    private readonly List<TimeSpan> _openedAt = [];
    private FakeVisaMeter? _open;

    public PausingBenchTests() => _scene.Board.Changed += status => _said.Add($"{status.Activity}: {status.Message}");

    public void Dispose() => _scene.Dispose();

    [Fact]
    public async Task A_lost_link_pauses_the_work_until_the_meter_is_back_and_the_work_begins_again()
    {
        Opens(Is(Identity), Gone, Gone, Gone, Gone, Is(Identity));
        var tries = 0;

        await RunAsync(async (bench, cancel) =>
        {
            if (tries++ == 0)
                _open!.Lose();
            await bench.Meter.ReadLevelAsync(cancel);
        });

        Assert.Equal(2, tries);
        Assert.Equal([typeof(BenchConnected), typeof(InstrumentLost), typeof(BenchConnected)], _scene.Written.Select(what => what.GetType()));
        var lost = Assert.Single(_scene.Written.OfType<InstrumentLost>());
        Assert.Equal((BenchInstrument.Meter, Meter), (lost.Instrument, lost.Resource));
        Assert.Contains(FakeVisaMeter.ConnectionLost, lost.Found, StringComparison.Ordinal);
        Assert.Contains(_said, words => words.StartsWith($"Paused: Paused. The meter at {Meter} is gone.", StringComparison.Ordinal));
        Assert.EndsWith("The meter is back.", _said[^1], StringComparison.Ordinal);
        Assert.Equal([BenchSound.Question], _scene.Sounds);
    }

    [Fact]
    public async Task It_is_tried_about_every_second_without_end()
    {
        Opens([Is(Identity), .. Enumerable.Repeat<Func<ILink>>(Gone, 100), Is(Identity)]);
        var tries = 0;

        await RunAsync((bench, cancel) => tries++ == 0 ? LoseAsync(bench, cancel) : Task.CompletedTask);

        var gaps = _openedAt.Zip(_openedAt.Skip(1), (one, next) => (next - one).TotalSeconds).Skip(5).ToList();
        Assert.All(gaps, seconds => Assert.InRange(seconds, 0.5, 1.5));
    }

    [Fact]
    public async Task The_output_in_hand_begins_anew_and_its_readings_do_not_count()
    {
        Opens(Is(Identity), Is(Identity));
        var tries = 0;
        _scene.Begin(JobStage.Sweep, 9, 10);
        _scene.Job.Append(Some.Swept(9));

        await RunAsync(async (bench, cancel) =>
        {
            _scene.Job.Append(new OutputRecognised(JobStage.Sweep, 10, 784, RecognisedBy.Tone));
            _scene.Job.Append(Read(tries == 0 ? 1 : 2));
            if (tries++ == 0)
                await LoseAsync(bench, cancel);
            _scene.Job.Append(Some.Swept(10) with { Readings = 1 });
        });

        Assert.Equal([2.0], _scene.Job.State.SweepReadings[10].Select(read => read.Millivolts));
        Assert.True(_scene.Job.State.IsDone(JobStage.Sweep, 9));
        Assert.Contains(_said, words => words.Contains("Output 10 begins anew", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Another_meter_is_not_taken_for_the_one_of_before()
    {
        Opens(Is(Identity), Is("Invented,Meter,78,1.0"), Is(Identity));
        var tries = 0;

        await RunAsync((bench, cancel) => tries++ == 0 ? LoseAsync(bench, cancel) : Task.CompletedTask);

        Assert.Contains(_said, words => words.Contains("is not the one of before. Found: Invented,Meter,78,1.0.", StringComparison.Ordinal));
        Assert.Equal([Identity, Identity], _scene.Written.OfType<BenchConnected>().Select(bench => bench.MeterIdentity));
    }

    [Fact]
    public async Task Newer_firmware_makes_no_other_meter_of_it()
    {
        Opens(Is(Identity), Is("Invented,Meter,77,2.0"));
        var tries = 0;

        await RunAsync((bench, cancel) => tries++ == 0 ? LoseAsync(bench, cancel) : Task.CompletedTask);

        Assert.Equal(2, tries);
    }

    [Fact]
    public async Task A_silent_meter_is_waited_for_too()
    {
        Opens(Is(Identity), Gone, Is(Identity));
        var tries = 0;

        await RunAsync(async (bench, cancel) =>
        {
            if (tries++ == 0)
                _open!.FallSilent();
            await bench.Meter.ReadLevelAsync(cancel);
        });

        Assert.Contains(_said, words => words.StartsWith($"Paused: Paused. The meter at {Meter} does not answer.", StringComparison.Ordinal));
        Assert.Equal(2, tries);
    }

    [Fact]
    public async Task At_the_beginning_a_meter_that_is_not_there_is_a_fault_at_once()
    {
        Opens(Gone);

        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => RunAsync((_, _) => Task.CompletedTask));

        Assert.Equal(BenchFault.NotReachable, fault.Kind);
        Assert.Empty(_scene.Written);
    }

    [Fact]
    public async Task Where_the_plan_waits_for_its_bench_a_meter_that_is_not_there_at_the_beginning_is_waited_for_and_that_is_said()
    {
        Opens(Gone, Gone, Is(Identity));
        var tries = 0;

        await RunAsync((_, _) => Task.FromResult(tries++), waitsForBench: true);

        Assert.Equal(1, tries);
        Assert.Equal(2, _said.Count(words => words.StartsWith("NeedsYou: Waiting for the bench: VI_ERROR_RSRC_NFOUND.", StringComparison.Ordinal)));
        Assert.Equal([typeof(BenchConnected)], _scene.Written.Select(what => what.GetType()));
    }

    [Fact]
    public async Task A_fault_that_waiting_does_not_mend_stops_the_work_and_closes_the_link()
    {
        Opens(Is(Identity));

        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => RunAsync((_, _) => throw new BenchFaultException(
            BenchFault.FixtureFault, "relay 3 told to close but read back open", "relay 3 closed", "mend it")));

        Assert.Equal(BenchFault.FixtureFault, fault.Kind);
        Assert.True(_open!.IsClosed);
        Assert.Empty(_scene.Written.OfType<InstrumentLost>());
    }

    [Fact]
    public async Task The_person_can_stop_the_wait()
    {
        using var stop = new CancellationTokenSource();
        Opens(Is(Identity), Gone, Gone, () => { stop.Cancel(); return Gone(); }, Gone);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => RunAsync(LoseAsync, cancellationToken: stop.Token));

        Assert.Single(_scene.Written.OfType<InstrumentLost>());
    }

    private static LevelRead Read(double millivolts) => new()
    {
        Stage = JobStage.Sweep,
        Output = 10,
        Picofarads = 100_000,
        Millivolts = millivolts,
        RelativeNoise = 0.003,
        Samples = 3,
        Settled = true,
        Seconds = 1,
    };

    private static ILink Gone() => throw new BenchFaultException(BenchFault.NotReachable, "VI_ERROR_RSRC_NFOUND", "a meter", "look at its cable");

    private Func<ILink> Is(string identity) => () => _open = new(identity) { Unanswered = _clock.NoAnswer };

    private void Opens(params Func<ILink>[] openings) => Array.ForEach(openings, _openings.Enqueue);

    private async Task LoseAsync(ConnectedBench bench, CancellationToken cancellationToken)
    {
        _open!.Lose();
        await bench.Meter.ReadLevelAsync(cancellationToken);
    }

    private async Task RunAsync(Func<ConnectedBench, CancellationToken, Task> work, bool waitsForBench = false, CancellationToken cancellationToken = default)
    {
        var plan = new JobPlan { Wiring = new() { Meter = Meter }, Stages = [JobStage.Survey], HandsFree = true, WaitsForBench = waitsForBench };
        var running = new PausingBench(plan, _scene.Job, _scene.Board, Options(), new FakeDialogue()).RunAsync(work, cancellationToken);
        await _clock.PassUntilAsync(running);
    }

    private InstrumentBenchOptions Options() => new()
    {
        Time = _clock,
        Exchange = new() { QueryTimeout = QueryTimeout, Retries = 0 },
        Links = time =>
        {
            var opener = new LinkOpener(time);
            opener.Register<GpibResource>((_, _, _) =>
            {
                _openedAt.Add(_clock.GetUtcNow() - _clock.Start);
                return Task.FromResult(_openings.Dequeue()());
            });
            return opener;
        },
    };
}
