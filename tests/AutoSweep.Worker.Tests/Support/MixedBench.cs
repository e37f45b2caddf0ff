using System.Globalization;
using AutoSweep.Core.Decades;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.ByHand;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>One filter of the shunt law on a bench of which a person dials, types levels, or both, and goes by what is asked.</summary>
internal sealed class MixedBench : IDisposable
{
    public const double PeakNanofarads = 131;
    public const double HalfWidthNanofarads = 12;
    private const int Output = 12;

    private readonly BenchScene _scene = new(gain: 1);
    private readonly ConnectedBench _bench;
    private double _dialled;
    private int _levels;
    private bool _takesBack;

    public MixedBench(bool isRead, bool isDialled)
    {
        Person = new() { Otherwise = Answer };
        DecadeBox box = new()
        {
            Decades = [new() { StepPicofarads = 100_000 }, new() { StepPicofarads = 10_000 }, new() { StepPicofarads = 1000 }, new() { StepPicofarads = 100 }],
        };
        // The box's 50 pF of stray are in circuit beside what its dials say.
        _scene.Meter.Shown = () => TakeLevel(Volts());
        _bench = new(new() { AmplifierGain = 1 },
            isRead ? new EyeReadMeter(Person, new()) : _scene.Meter, isDialled ? new HandDialledBox(box, Person) : _scene.Fixture);
        Present = () => isDialled ? _dialled + 0.05 : _scene.Fixture.Present.Nanofarads;
    }

    public FakeDialogue Person { get; }

    /// <summary>The level of which number is misread, by a factor, and taken back at the next question; none for 0.</summary>
    public (int At, double Factor) Slip { get; init; }

    public IReadOnlyList<JournalEvent> Written => _scene.Written;

    public IReadOnlyList<LevelRead> Counted => _scene.Job.State.InHand!.Readings;

    private Func<double> Present { get; }

    public async Task<PeakResult> SearchAsync()
    {
        _scene.Begin(JobStage.Sweep, Output);
        _scene.Job.Append(new OutputRecognised(JobStage.Sweep, Output, null, RecognisedBy.Person));
        var levels = new LevelReader(_bench, new() { Samples = 2, Span = TimeSpan.Zero }, _scene.Clock, NullLogger<LevelReader>.Instance);
        var output = _scene.Job.Profile.Outputs.Single(one => one.Number == Output);
        var search = new TypedSearch(_bench, levels, _scene.Job, _scene.Board, _scene.Clock);
        return (await search.SearchAsync(output, SweepPriors.For(output, _scene.Job.State), default)).Result;
    }

    public void Dispose() => _scene.Dispose();

    private double Volts() => 0.006 / Math.Sqrt(1 + Math.Pow((Present() - PeakNanofarads) / HalfWidthNanofarads, 2));

    private string? Answer(string question)
    {
        if (_takesBack && question.Contains("u takes the last level back", StringComparison.Ordinal))
        {
            _takesBack = false;
            return "u";
        }

        if (question.Contains("DIAL", StringComparison.Ordinal))
        {
            _dialled = double.Parse(question.Split("= ")[1].Split(' ')[0], CultureInfo.InvariantCulture);
            return "";
        }

        // Three digits; the box's own measurement, at the end, four.
        return question.Contains("LEVEL", StringComparison.Ordinal)
            ? string.Create(CultureInfo.InvariantCulture, $"{TakeLevel(Volts()) * 1e3:0.00} mV")
            : string.Create(CultureInfo.InvariantCulture, $"{Present():0.0}n");
    }

    private double TakeLevel(double volts)
    {
        if (++_levels != Slip.At)
            return volts;
        _takesBack = true;
        return Slip.Factor * volts;
    }
}
