using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A job on a bench of fakes: one second passes with every count, and everything that is written down is kept in order.</summary>
internal sealed class BenchScene : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public BenchScene(double gain = 20, GeneratorProfile? profile = null)
    {
        Job = Some.Job(_folder, profile);
        Job.Appended += entry => Written.Add(entry.Event);
        Board.Sounded += Sounds.Add;
        Bench = new(new() { AmplifierGain = gain }, Meter, Fixture);
        Levels = new(Bench, new() { Span = TimeSpan.Zero }, Clock, NullLogger<LevelReader>.Instance);
        Signals = new(Bench, Board);
        Tones = new(Bench, Levels, Job, Options, NullLogger<ToneWatch>.Instance);
        Meter.Counting = () => Clock.Advance(TimeSpan.FromSeconds(1));
    }

    public FakeTimeProvider Clock { get; } = new();

    public FakeMeter Meter { get; } = new();

    public FakeFixture Fixture { get; } = new();

    public BenchBoard Board { get; } = new();

    public ClipWatchOptions Options { get; } = new();

    public JobRecord Job { get; }

    public ConnectedBench Bench { get; }

    public LevelReader Levels { get; }

    public BenchSignals Signals { get; }

    public ToneWatch Tones { get; }

    /// <summary>What the job has written down since it was opened, in order.</summary>
    public List<JournalEvent> Written { get; } = [];

    public List<BenchSound> Sounds { get; } = [];

    public IEnumerable<ClipQuestion> Asked => Written.OfType<ClipQuestioned>().Select(one => one.Question);

    public double Tone(int output) => Job.Profile.ToneOf(Job.Profile.Outputs.Single(one => one.Number == output)).Hertz;

    /// <summary>Counts the tone of an output twice: as much as makes a verdict where the counter has its level.</summary>
    public void Clip(int output) => Meter.Count(Tone(output), Tone(output));

    public void Begin(JobStage stage, params int[] planned) => Job.Append(new StageStarted(stage, planned));

    public void Surveyed(params int[] outputs)
    {
        foreach (var output in outputs)
            Job.Append(Some.Surveyed(output));
    }

    public ClipWatch Watch() => new(
        Tones, new(Bench, Levels, Job, Clock), Levels, Job, new(Job, Board, Signals), Options, Clock);

    public void Dispose()
    {
        Job.Dispose();
        _folder.Dispose();
    }
}
