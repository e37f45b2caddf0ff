using AutoSweep.Instruments;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A meter that answers what the test has written down, and after that what the test makes of the moment.</summary>
internal sealed class FakeMeter : ILevelMeter
{
    /// <summary>The count in hertz when none is written down; a test without it ends in an error there, not in a hang.</summary>
    public Func<double>? Heard { get; set; }

    /// <summary>The level in volts when none is written down.</summary>
    public Func<double>? Shown { get; set; }

    /// <summary>Called at every count: what a second of counting does to the scene.</summary>
    public Action? Counting { get; set; }

    public Queue<MeterReading> Levels { get; } = [];

    public Queue<MeterReading> Counts { get; } = [];

    public int Beeps { get; private set; }

    public List<double> Prepared { get; } = [];

    public InstrumentIdentity Identity { get; } = new("Invented", "Meter", "1", "1");

    public double RangeVolts { get; private set; } = 0.1;

    public TimeSpan Settling => TimeSpan.Zero;

    /// <summary>The series that the meter takes; none where it takes none.</summary>
    public LevelBurst? Burst { get; set; }

    public Task<LevelBurst?> ReadBurstAsync(CancellationToken cancellationToken) => Task.FromResult(Burst);

    /// <summary>What the meter is uncertain by in volts, noise left out.</summary>
    public double? Uncertainty { get; set; }

    public double? UncertaintyVolts(double volts) => Uncertainty;

    public void Level(params double[] volts) => Array.ForEach(volts, value => Levels.Enqueue(new(MeterReadingKind.Value, value, "")));

    public void Overload() => Levels.Enqueue(new(MeterReadingKind.Overload, double.NaN, "+9.90000000E+37"));

    public void Count(params double[] hertz) => Array.ForEach(hertz, value => Counts.Enqueue(new(MeterReadingKind.Value, value, "")));

    public Task PrepareLevelAsync(double largestVolts, double lowestHertz, CancellationToken cancellationToken)
    {
        Prepared.Add(largestVolts);
        while (RangeVolts < largestVolts)
            RangeVolts *= 10;
        return Task.CompletedTask;
    }

    public Task<MeterReading> ReadLevelAsync(CancellationToken cancellationToken) => Task.FromResult(Next(Levels, Shown));

    public Task<MeterReading> CountFrequencyAsync(CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        Counting?.Invoke();
        return Task.FromResult(Next(Counts, Heard));
    }

    public List<string> Texts { get; } = [];

    public Task ShowAsync(string text, CancellationToken cancellationToken)
    {
        Texts.Add(text);
        return Task.CompletedTask;
    }

    public Task BeepAsync(CancellationToken cancellationToken)
    {
        Beeps++;
        return Task.CompletedTask;
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private static MeterReading Next(Queue<MeterReading> written, Func<double>? otherwise) =>
        written.Count == 0 && otherwise is not null ? new(MeterReadingKind.Value, otherwise(), "") : written.Dequeue();
}
