using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Tests.Peaks;

/// <summary>Whatever a bench tells it, a search ends within its budget, with a reason and every reading in its trace.</summary>
public class PeakSearchAlwaysEndsTests
{
    [Theory]
    [InlineData("any level, any noise")]
    [InlineData("some silent, some unsettled")]
    [InlineData("another capacitance than asked")]
    [InlineData("one decade after another")]
    public void A_search_ends_with_a_reason_whatever_it_is_told(string nonsense)
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var random = new Random(seed);
            var budget = random.Next(1, 24);
            var result = Search(budget, (asked, reading) => Nonsense(nonsense, random, asked, reading));
            Assert.True(Enum.IsDefined(result.Reason));
            Assert.InRange(result.Trace.Count, 1, budget);
            Assert.True(result.Reason != PeakStopReason.BoundReached || result.PeakSdPicofarads > 0);
        }
    }

    private static PeakReading Nonsense(string kind, Random random, Capacitance asked, int reading)
    {
        var level = new Level(random.NextDouble());
        var at = TimeSpan.FromSeconds(2 * reading);
        return kind switch
        {
            "any level, any noise" => new(asked, level, Math.Pow(10, -6 * random.NextDouble()), at),
            "some silent, some unsettled" => new(asked, random.Next(3) == 0 ? new(0) : level, 0.01, at, random.Next(3) > 0),
            "another capacitance than asked" => new(new(random.Next(1, 2_000_000)), level, 0.01, at),
            _ => new(asked, new(Math.Pow(10, random.Next(-9, 3))), 0.01, at),
        };
    }

    private static PeakResult Search(int budget, Func<Capacitance, int, PeakReading> bench)
    {
        var search = new PeakSearch(
            new PeakPrior { Expected = Capacitance.FromNanofarads(105) },
            new PeakSearchOptions { Smallest = new(100), Largest = new(1_000_000), Budget = budget });
        for (var reading = 1; ; reading++)
        {
            switch (search.Next())
            {
                case PeakStep.Done done:
                    return done.Result;
                case PeakStep.Read read:
                    Assert.InRange(read.Capacitance.Picofarads, 100, 1_000_000);
                    search.Tell(bench(read.Capacitance, reading));
                    break;
            }
        }
    }
}
