using AutoSweep.Core;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class ReturningInstrumentTests
{
    private readonly ReturningMeters _place = new();
    private readonly FakeCapacitanceMeter _before = new();
    private readonly FakeCapacitanceMeter _after = new();

    [Fact]
    public async Task It_is_said_what_is_missing_waited_and_the_work_begun_again_on_the_instrument_that_came_back()
    {
        _place.ThenGone().ThenGone().Then(_after);
        await using var meter = _place.Begin(_before);

        var worked = await _place.PassAsync(meter.UseAsync(
            present => present == _before ? throw ReturningMeters.Lost() : Task.FromResult(present), default));

        Assert.Same(_after, worked);
        Assert.True(_before.IsClosed);
        Assert.Equal(
            [
                "\a\a",
                "  >> Paused. The capacitance meter at GPIB0::17::INSTR is gone. Look at its cable, at both ends, and whether it is on. "
                    + "The work goes on by itself; leave what is clipped where it is. Ctrl-C stops.",
                "  >> The capacitance meter is back. It is read anew.",
            ],
            _place.Said);
    }

    [Fact]
    public async Task Another_instrument_is_not_taken_for_the_one_of_before()
    {
        var other = new FakeCapacitanceMeter { Serial = "2" };
        _place.Then(other).Then(_after);
        await using var meter = _place.Begin(_before);

        await _place.PassAsync(meter.UseAsync(present => present == _before ? throw ReturningMeters.Lost() : Task.FromResult(present), default));

        Assert.True(other.IsClosed);
        Assert.Contains(_place.Said, words => words.Contains("is not the one of before. Found: 2. Expected: 1", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_fault_of_another_kind_or_of_another_instrument_is_not_waited_for()
    {
        await using var meter = _place.Begin(_before);

        await Assert.ThrowsAsync<BenchFaultException>(() => meter.UseAsync<int>(
            _ => throw new BenchFaultException(BenchFault.FixtureFault, "relay 3", "closed", "mend it"), default));
        await Assert.ThrowsAsync<BenchFaultException>(() => meter.UseAsync<int>(
            _ => throw new BenchFaultException(BenchFault.NotReachable, "the fixture", "a link", "look") { LostResource = "COM3" }, default));

        Assert.Empty(_place.Said);
    }

    [Fact]
    public async Task Silence_three_times_without_a_reading_between_stops()
    {
        _place.Then(_after).Then(_after);
        await using var meter = _place.Begin(_before);

        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => _place.PassAsync(
            meter.UseAsync<int>(_ => throw ReturningMeters.Lost(BenchFault.NoAnswer), default)));

        Assert.Equal(BenchFault.NoAnswer, fault.Kind);
        Assert.Equal(2, _place.Said.Count(words => words.Contains("is back", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Silence_with_readings_between_is_waited_for_each_time()
    {
        for (var time = 0; time < 10; time++)
            _place.Then(_after);
        await using var meter = _place.Begin(_before);
        var tries = 0;

        await _place.PassAsync(meter.UseAsync(present =>
        {
            meter.Answered();
            return ++tries <= 10 ? throw ReturningMeters.Lost(BenchFault.NoAnswer) : Task.FromResult<ICapacitanceMeter>(present);
        }, default));

        Assert.Equal(11, tries);
    }

    [Fact]
    public async Task The_person_can_stop_the_wait()
    {
        using var stop = new CancellationTokenSource();
        _place.ThenGone().ThenGone();
        await using var meter = _place.Begin(_before);
        var work = meter.UseAsync<int>(_ => throw ReturningMeters.Lost(), stop.Token);
        await _place.Clock.SomebodyWaitsAsync();

        await stop.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work);
    }
}
