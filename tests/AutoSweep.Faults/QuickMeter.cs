using AutoSweep.Instruments;
using AutoSweep.Instruments.Meters;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Meter;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Faults;

/// <summary>The simulated meter without a wire: the same sampler, counter and detector, driven as the driver file drives it.</summary>
internal sealed class QuickMeter(MeterDefinition meter, MeterDriver driver, SimulatedBench bench, JumpingClock clock, Action beeped) : ILevelMeter
{
    private readonly LevelSampler sampler = new(meter);
    private readonly FrequencyCounter counter = new(meter);
    private bool counting;
    private double filterHertz = 20;
    private TimeSpan setUpAt;

    public InstrumentIdentity Identity { get; } = new("AutoSweep", "Simulated bench meter", "0", "1.0");

    public double RangeVolts { get; private set; } = 0.1;

    public TimeSpan Settling => TimeSpan.FromSeconds(Bandwidth(filterHertz).SettleSeconds);

    public double? UncertaintyVolts(double volts) => driver.Level!.Accuracy?.StandardUncertaintyVolts(volts, RangeVolts);

    private DriverBurst Burst => driver.Level!.Burst!;

    public Task PrepareLevelAsync(double largestVolts, double lowestHertz, CancellationToken cancellationToken)
    {
        var level = driver.Level!;
        Choose(false, level.RangesVolts.First(range => range * level.OverRange >= largestVolts),
            level.Bandwidths.LastOrDefault(one => one.FromToneHertz <= lowestHertz, level.Bandwidths[0]).Hertz);
        return Task.CompletedTask;
    }

    public Task<MeterReading> ReadLevelAsync(CancellationToken cancellationToken)
    {
        Choose(false, RangeVolts, filterHertz);
        Settle(Settling);
        return Task.FromResult(Reading(Sample(TimeSpan.FromSeconds(MeterSettings.LevelApertureSeconds), filterHertz)));
    }

    public Task<LevelBurst?> ReadBurstAsync(CancellationToken cancellationToken)
    {
        Choose(false, RangeVolts, 200, TimeConstant(200));
        clock.Pass(TimeSpan.FromSeconds(Burst.SettleSeconds));
        double[] samples = [.. Enumerable.Range(0, Burst.Samples).Select(_ => Sample(TimeSpan.FromSeconds(Burst.IntervalSeconds), 200))];
        return Task.FromResult<LevelBurst?>(samples.Any(volts => volts >= LevelSampler.Overload) ? null : new(samples,
            TimeSpan.FromSeconds(Burst.IntervalSeconds), TimeSpan.FromSeconds(Burst.ApertureSeconds), TimeSpan.FromSeconds(Burst.TimeConstantSeconds)));
    }

    public Task<MeterReading> CountFrequencyAsync(CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var frequency = driver.Frequency!;
        Choose(true, RangeVolts, filterHertz);
        Settle(TimeSpan.FromSeconds(frequency.SettleSeconds));
        clock.Pass(TimeSpan.FromSeconds(frequency.ApertureSeconds));
        return Task.FromResult(Reading(bench.Look(clock.Now, view => counter.Count(view, frequency.ApertureSeconds, 0.1))));
    }

    public Task ShowAsync(string text, CancellationToken cancellationToken) => Task.CompletedTask;

    public Task BeepAsync(CancellationToken cancellationToken)
    {
        beeped();
        return Task.CompletedTask;
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private double Sample(TimeSpan interval, double filter)
    {
        clock.Pass(interval);
        return bench.Look(clock.Now, view => sampler.Sample(view, RangeVolts, MeterSettings.LevelApertureSeconds, filter));
    }

    private static MeterReading Reading(double value) => value >= LevelSampler.Overload
        ? new(MeterReadingKind.Overload, double.NaN, "+9.90000000E+37")
        : new(MeterReadingKind.Value, value, "");

    private void Settle(TimeSpan settling)
    {
        var left = settling - (clock.Now - setUpAt);
        if (left > TimeSpan.Zero) clock.Pass(left);
    }

    // A change of function, range or filter empties the detector.
    private void Choose(bool count, double range, double filter, double? timeConstant = null)
    {
        if (counting == count && RangeVolts == range && filterHertz == filter) return;
        (counting, RangeVolts, filterHertz, setUpAt) = (count, range, filter, clock.Now);
        bench.WithDetector(detector =>
        {
            detector.Empty();
            detector.TimeConstantSeconds = timeConstant ?? TimeConstant(filter);
        });
    }

    // As the simulated instrument has it: settling leaves e^-10.
    private double TimeConstant(double filter) => Bandwidth(filter).SettleSeconds / 10;

    private DriverBandwidth Bandwidth(double hertz) => driver.Level!.Bandwidths.Single(one => one.Hertz == hertz);
}
