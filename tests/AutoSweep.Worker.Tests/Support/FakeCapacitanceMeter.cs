using AutoSweep.Core.Calibration;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A capacitance meter that answers what the test has lined up.</summary>
internal sealed class FakeCapacitanceMeter(params IEnumerable<CapacitanceReading> readings) : ICapacitanceMeter
{
    private readonly Queue<CapacitanceReading> _readings = new(readings);

    public InstrumentIdentity Identity => new("Invented", "LCR", "1", "1.0");

    public double TestHertz => 1000;

    public MeterAccuracy Accuracy => new(0.0005, 0.05);

    public TimeSpan ReadTime => TimeSpan.Zero;

    public void Reads(params double[] picofarads) =>
        Array.ForEach(picofarads, value => _readings.Enqueue(new(CapacitanceReadingKind.Value, value, 0.0004, "")));

    public void Reads(CapacitanceReadingKind kind) => _readings.Enqueue(new(kind, double.NaN, null, ""));

    public Task<CapacitanceReading> ReadAsync(CancellationToken cancellationToken) => Task.FromResult(_readings.Dequeue());

    public Task ShowAsync(string text, CancellationToken cancellationToken) => Task.CompletedTask;

    public Task BeepAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
