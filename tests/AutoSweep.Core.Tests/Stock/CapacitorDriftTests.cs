using AutoSweep.Core.Stock;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Stock;

public class CapacitorDriftTests
{
    // All invented: made in 1958 and 1970, taken off in 2026 (Some.Time).
    private static readonly StockEvent[] Ledger =
    [
        Old("a", 49, 130_000, 100_000, 1958),
        Old("a", 50, 120_000, 100_000, 1958),
        Old("a", 51, 128_000, 100_000, 1958),
        Old("b", 49, 110_000, 100_000, 1970),
        Old("b", 50, 255_000, 250_000, 1970),
        Old("b", 51, null, 250_000, null),
        Old("b", 52, 99_000, null, null),
        Old("b", 49, 112_000, 100_000, 1970),
        Old("b", 53, 400_000, 100_000, 1970),
        new LedgerEntryWithdrawn(9),
    ];

    [Fact]
    public void Drift_goes_by_printed_value_with_the_latest_of_an_output_and_without_what_was_taken_back()
    {
        var groups = CapacitorDrift.ByNominal(Fold());
        Assert.Equal([100_000, 250_000, null], groups.Select(group => group.Key));
        // 30, 20, 28 and 12 per cent: median 24; deviations 6, 4, 4, 12, median 5, over 0.6745 7.413.
        Assert.Equal((4, 0, 2), (groups[0].Count, groups[0].Failed, groups[0].Jobs));
        Assert.Equal(24, groups[0].MedianPercent!.Value, 9);
        Assert.Equal(7.413, groups[0].ScatterPercent!.Value, 3);
        Assert.Equal((12, 30), (groups[0].LeastPercent, groups[0].MostPercent));
        Assert.Equal((2, 1, 2.0, null), (groups[1].Count, groups[1].Failed, groups[1].MedianPercent, groups[1].ScatterPercent));
        Assert.Equal((1, null), (groups[2].Count, groups[2].MedianPercent));
    }

    [Fact]
    public void Drift_goes_by_decades_of_age_when_it_was_taken_off()
    {
        var groups = CapacitorDrift.ByAge(Fold());
        Assert.Equal([50, 60, null], groups.Select(group => group.Key));
        Assert.Equal([2, 3, 2], groups.Select(group => group.Count));
        Assert.Equal(28, groups[1].MedianPercent);
    }

    [Fact]
    public void An_empty_ledger_has_no_groups() => Assert.Empty(CapacitorDrift.ByAge(StockState.Empty));

    private static StockState Fold() => Ledger.Select((what, index) => new StockEntry(index + 1, Some.Time, what))
        .Aggregate(StockState.Empty, (state, entry) => state.Apply(entry));

    private static OldCapacitorRemoved Old(string job, int output, long? measured, long? nominal, int? madeIn) => new(
        job, output, measured is { } picofarads ? new(picofarads, 0, Some.Time) : null, nominal, MadeIn: madeIn);
}
