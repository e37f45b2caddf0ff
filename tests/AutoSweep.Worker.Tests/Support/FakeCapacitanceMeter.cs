using AutoSweep.Core.Calibration;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A capacitance meter that answers what the test has lined up.</summary>
internal sealed class FakeCapacitanceMeter(params IEnumerable<CapacitanceReading> readings) : ICapacitanceMeter
{
    private readonly Queue<Func<CapacitanceReading>> _readings = new(readings.Select<CapacitanceReading, Func<CapacitanceReading>>(reading => () => reading));

    public InstrumentIdentity Identity => new("Invented", "LCR", Serial, "1.0");

    public string Serial { get; init; } = "1";

    /// <summary>What was shown and beeped, in order.</summary>
    public List<string> Told { get; } = [];

    public bool IsClosed { get; private set; }

    public double TestHertz => 1000;

    public MeterAccuracy Accuracy => new(0.0005, 0.05);

    public TimeSpan ReadTime => TimeSpan.Zero;

    public void Reads(params double[] picofarads) =>
        Array.ForEach(picofarads, value => Add(new(CapacitanceReadingKind.Value, value, 0.0004, "")));

    public void Reads(CapacitanceReadingKind kind) => Add(new(kind, double.NaN, null, ""));

    /// <summary>The next reading meets this fault.</summary>
    public void Fails(Exception fault) => _readings.Enqueue(() => throw fault);

    public Task<CapacitanceReading> ReadAsync(CancellationToken cancellationToken) => Task.FromResult(_readings.Dequeue()());

    public Task ShowAsync(string text, CancellationToken cancellationToken) => TellAsync(text);

    public Task BeepAsync(CancellationToken cancellationToken) => TellAsync("beep");

    public ValueTask DisposeAsync()
    {
        IsClosed = true;
        return ValueTask.CompletedTask;
    }

    private void Add(CapacitanceReading reading) => _readings.Enqueue(() => reading);

    private Task TellAsync(string what)
    {
        Told.Add(what);
        return Task.CompletedTask;
    }
}
