using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Tests.Peaks.Support;

/// <summary>An output that a bench may meet, made by hand: what the meter gives at a capacitance, reading by reading.</summary>
public sealed class NamedProblem
{
    /// <summary>What a technician would say of it.</summary>
    public required string Name { get; init; }

    /// <summary>Volts at a capacitance in nanofarads; the second figure counts readings from 1.</summary>
    public required Func<double, int, double> Volts { get; init; }

    public double ExpectedNanofarads { get; init; } = 105;

    public double RelativeNoise { get; init; } = 0.004;

    public long SmallestPicofarads { get; init; } = 100;

    public long LargestPicofarads { get; init; } = 1_000_000;

    /// <summary>Readings, counted from 1, whose samples still moved.</summary>
    public int[] Unsettled { get; init; } = [];

    /// <summary>The box's step; what is told is the nearest multiple of it.</summary>
    public long StepPicofarads { get; init; } = 100;

    public PeakResult Search()
    {
        var random = new Random(7);
        var search = new PeakSearch(
            new PeakPrior { Expected = Capacitance.FromNanofarads(ExpectedNanofarads) },
            new PeakSearchOptions { Smallest = new(SmallestPicofarads), Largest = new(LargestPicofarads) });
        for (var reading = 1; ; reading++)
        {
            switch (search.Next())
            {
                case PeakStep.Done done:
                    return done.Result;
                case PeakStep.Read read:
                    var set = Math.Max(StepPicofarads, (read.Capacitance.Picofarads + StepPicofarads / 2) / StepPicofarads * StepPicofarads);
                    var noise = 1 + RelativeNoise * (random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5) * 2;
                    search.Tell(new PeakReading(
                        new(set), new(Volts(set * 1e-3, reading) * noise), RelativeNoise, TimeSpan.FromSeconds(2 * reading), !Unsettled.Contains(reading)));
                    break;
            }
        }
    }

    public override string ToString() => Name;
}
