using AutoSweep.Core.Journal;
using AutoSweep.Core.Stock;
using AutoSweep.Core.Tests.Support;
using AutoSweep.Sources.Matching;

namespace AutoSweep.Core.Tests.Stock;

public sealed class StockStateTests
{
    private static readonly PartsTakenIn Three = new([InventedShop.Part("P1", 100_000), InventedShop.Part("P2", 47_000),
        InventedShop.Part("P3", 52_000)]);

    public static TheoryData<StockEvent> Events => new(
        Three,
        new PartMeasuredAgain("P1", new(100_100, 50, Some.Time, 0.0004, "meter")),
        new PartsReserved("job", [new("P1", 49)], ["P2"]),
        new PartsReleased("job", ["P1"]),
        new PartsFitted("job", 49, ["P1"]),
        new PartScrapped("P1", "dropped"),
        new OldCapacitorRemoved("job", 49, new(130_000, 0, Some.Time), 100_000, "cracked"),
        new OldCapacitorRemoved("job", 50),
        new BinsFixed([100_000]),
        new BinsFixed(),
        new LedgerEntryWithdrawn(1),
        new LedgerLinesSetAside("stock.jsonl.damaged", [2]));

    [Theory]
    [MemberData(nameof(Events))]
    public void Every_kind_of_event_comes_back_from_its_line_as_it_was(StockEvent what)
    {
        var line = ChecksummedLine.Write(new StockEntry(7, Some.Time, what));

        Assert.True(ChecksummedLine.TryRead<StockEntry>(line, out var entry, out _));
        Assert.Equal(line, ChecksummedLine.Write(entry!));
        Assert.IsType(what.GetType(), entry!.Event);
    }

    [Fact]
    public void Every_kind_of_event_is_in_the_table_above()
    {
        var known = typeof(StockEvent).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(StockEvent)));

        Assert.Equal(known.Select(type => type.Name).Order(), ((IEnumerable<object[]>)Events).Select(row => row[0].GetType().Name)
            .Distinct().Order());
    }

    [Fact]
    public void A_part_goes_from_its_bin_by_way_of_a_reservation_into_the_generator()
    {
        var reserved = Fold(Three, new PartsReserved("job", [new("P2", 49), new("P3", 49)]));
        var fitted = Fold(Three, new PartsReserved("job", [new("P2", 49), new("P3", 49)]), new PartsFitted("job", 49, ["P2", "P3"]));

        Assert.Equal(["P3", "P2"], reserved.HeldBy("job", PartStatus.Reserved)[49].Select(part => part.Id));
        Assert.Equal(["P1"], reserved.FreeFor("other").Select(part => part.Id));
        Assert.Equal(3, reserved.FreeFor("job").Count());
        Assert.Empty(fitted.HeldBy("job", PartStatus.Reserved));
        Assert.Equal(new PartPlace("job", 49), fitted.Parts["P2"].Place);
    }

    [Fact]
    public void A_part_reserved_by_one_job_is_refused_to_another_and_the_refusal_says_who_has_it()
    {
        var state = Fold(Three, new PartsReserved("job", [new("P2", 49)]));

        var refusal = StockRules.Refusal(state, new PartsReserved("other", [new("P2", 50)]));

        Assert.Contains("P2 is reserved for output 49 of job", refusal!.Found, StringComparison.Ordinal);
        Assert.Null(StockRules.Refusal(state, new PartsReserved("job", [new("P2", 50)])));
    }

    public static TheoryData<StockEvent> Refused => new(
        new PartsTakenIn([]),
        new PartsTakenIn([InventedShop.Part("P1", 1)]),
        new PartsTakenIn([InventedShop.Part("P9", 0)]),
        new PartsTakenIn([InventedShop.Part("P9", 1), InventedShop.Part("P9", 2)]),
        new PartMeasuredAgain("P9", new(1, 0, Some.Time)),
        new PartMeasuredAgain("P1", new(1, double.NaN, Some.Time)),
        new PartsReserved("job", [new("P1", 49), new("P1", 50)]),
        new PartsReserved("job", [], ["P1"]),
        new PartsReleased("job", ["P1"]),
        new PartScrapped("P9", ""),
        new BinsFixed([2, 1]),
        new LedgerEntryWithdrawn(1),
        new LedgerEntryWithdrawn(99));

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_does_not_fit_the_stock_is_refused_and_changes_nothing(StockEvent what)
    {
        // P1 is measured again, so that its taking in cannot be taken back under it.
        var before = Fold(Three, new PartMeasuredAgain("P1", new(100_100, 0, Some.Time)));

        Assert.NotNull(StockRules.Refusal(before, what));
        Assert.Equal(before.Parts, before.Apply(new(3, Some.Time, what)).Parts);
    }

    [Fact]
    public void Taking_an_entry_back_brings_back_what_was_before_it()
    {
        var fitted = Fold(Three, new PartsReserved("job", [new("P2", 49)]), new PartsFitted("job", 49, ["P2"]),
            new LedgerEntryWithdrawn(3));
        var measured = Fold(Three, new PartMeasuredAgain("P1", new(99_000, 0, Some.Time)), new LedgerEntryWithdrawn(2));

        Assert.Equal(PartStatus.Reserved, fitted.Parts["P2"].Status);
        Assert.Equal(100_000, measured.Parts["P1"].Measured.Picofarads);
        Assert.NotNull(StockRules.Refusal(measured, new LedgerEntryWithdrawn(2)));
    }

    [Fact]
    public void An_entry_on_which_a_later_one_rests_is_taken_back_after_it()
    {
        var state = Fold(Three, new PartsReserved("job", [new("P2", 49)]));

        Assert.Equal("take entry 2 back first", StockRules.Refusal(state, new LedgerEntryWithdrawn(1))!.WhatToDo);
        Assert.Null(StockRules.Refusal(state.Apply(new(3, Some.Time, new LedgerEntryWithdrawn(2))), new LedgerEntryWithdrawn(1)));
    }

    [Fact]
    public void An_id_is_never_given_twice_even_after_its_part_was_taken_back()
    {
        var state = Fold(new PartsTakenIn([InventedShop.Part("P00007", 1)]), new LedgerEntryWithdrawn(1));

        Assert.Equal("P00008", state.FreshIds().First());
    }

    [Fact]
    public void The_latest_old_capacitor_of_an_output_counts()
    {
        var state = Fold(new OldCapacitorRemoved("job", 49, null), new OldCapacitorRemoved("job", 49, new(130_000, 0, Some.Time), 100_000));

        Assert.Equal(130_000, state.OldCapacitors[new("job", 49)].Measured!.Picofarads);
    }

    private static StockState Fold(params StockEvent[] events) =>
        events.Select((what, index) => new StockEntry(index + 1, Some.Time, what))
            .Aggregate(StockState.Empty, (state, entry) => state.Apply(entry));
}
