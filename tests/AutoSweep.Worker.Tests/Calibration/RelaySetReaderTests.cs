using AutoSweep.Core;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Calibration;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Calibration;

public sealed class RelaySetReaderTests
{
    private readonly FakeRelayBox _box = new();
    private readonly List<string> _questions = [];

    [Fact]
    public async Task Each_set_is_closed_and_its_typed_value_taken()
    {
        var read = await new RelaySetRun(Typed("233.5p", "334.2p", "0.4364n")).ReadAsync([0, 1, 2], 1, default);
        Assert.Equal([0u, 1, 2], _box.Closed);
        Assert.Equal([233.5, 334.2, 436.4], read.Select(set => Math.Round(set[0].Picofarads, 6)));
    }

    [Fact]
    public async Task U_takes_the_set_before_back_and_closes_it_again()
    {
        var read = await new RelaySetRun(Typed("233.5p", "999n", "u", "334.2p", "436.4p")).ReadAsync([0, 1, 2], 1, default);
        Assert.Equal([0u, 1, 2, 1, 2], _box.Closed);
        Assert.Equal([233.5, 334.2, 436.4], read.Select(set => set[0].Picofarads));
    }

    [Fact]
    public async Task U_at_the_first_set_changes_nothing()
    {
        var read = await new RelaySetRun(Typed("u", "5p")).ReadAsync([0], 1, default);
        Assert.Equal(5, read[0][0].Picofarads);
    }

    [Fact]
    public async Task What_is_not_understood_is_asked_again_with_an_example()
    {
        await new RelaySetRun(Typed("233,5", "233.5p")).ReadAsync([0b101], 1, default);
        Assert.Contains("relays 1, 3", _questions[0], StringComparison.Ordinal);
        Assert.Contains("'233,5' is not understood", _questions[1], StringComparison.Ordinal);
        Assert.Contains("104.5n", _questions[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("q")]
    [InlineData(null)]
    public async Task Q_and_the_inputs_end_stop(string? typed) =>
        await Assert.ThrowsAsync<OperationCanceledException>(() => new RelaySetRun(Typed(typed)).ReadAsync([0], 1, default));

    [Fact]
    public async Task A_meter_that_overloads_once_is_asked_again()
    {
        var meter = new FakeCapacitanceMeter(Bad(CapacitanceReadingKind.Overload), Good(100), Good(101));
        var readings = await new MeteredSets(_box, meter).ReadAsync(RelaySet.None, 2, default);
        Assert.Equal([100, 101], readings!.Select(reading => reading.Picofarads));
    }

    [Fact]
    public async Task A_meter_that_keeps_overloading_is_told_with_the_relays_that_were_closed()
    {
        var meter = new FakeCapacitanceMeter(Enumerable.Repeat(Bad(CapacitanceReadingKind.Overload), 3));
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => new MeteredSets(_box, meter).ReadAsync(new(0b100), 1, default));
        Assert.Contains("relay 3", fault.Found, StringComparison.Ordinal);
        Assert.Contains("Overload", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Relays_that_fell_open_by_themselves_are_closed_and_read_anew()
    {
        _box.Falls.Enqueue(true);
        var meter = new FakeCapacitanceMeter(Good(100), Good(33), Good(101), Good(102));
        var readings = await new MeteredSets(_box, meter).ReadAsync(new(0b100), 2, default);
        Assert.Equal([101, 102], readings!.Select(reading => reading.Picofarads));
        Assert.Equal([0b100u, 0b100u], _box.Closed);
    }

    [Fact]
    public async Task A_box_whose_relays_fall_open_every_time_is_at_fault()
    {
        foreach (var hasFallen in Enumerable.Repeat(true, 3))
            _box.Falls.Enqueue(hasFallen);
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() =>
            new MeteredSets(_box, new FakeCapacitanceMeter(Enumerable.Repeat(Good(100), 3))).ReadAsync(new(0b100), 1, default));
        Assert.Equal(BenchFault.FixtureFault, fault.Kind);
        Assert.Contains("relay 3", fault.Found, StringComparison.Ordinal);
    }

    private TypedSets Typed(params string?[] lines)
    {
        var left = new Queue<string?>(lines);
        return new(_box, (question, _) =>
        {
            _questions.Add(question);
            return Task.FromResult(left.Dequeue());
        });
    }

    private static CapacitanceReading Good(double picofarads) => new(CapacitanceReadingKind.Value, picofarads, 0.001, "");

    private static CapacitanceReading Bad(CapacitanceReadingKind kind) => new(kind, double.NaN, null, "9.9E37");
}
