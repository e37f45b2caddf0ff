using AutoSweep.Core;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Scpi;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Fixture;

public sealed class ScpiRelayFixtureTests
{
    private static readonly TimeSpan Watchdog = TimeSpan.FromSeconds(10);

    private readonly ObservedTime _time = new();
    private readonly LogLines _log = new();

    [Fact]
    public async Task Opening_opens_every_relay_and_starts_the_watchdog()
    {
        var box = new FixtureBox();
        await using var fixture = await OpenAsync(box);
        Assert.Equal("F-0007", fixture.Serial);
        Assert.Equal(new Capacitance(150), fixture.Smallest);
        Assert.Equal(new Capacitance(1_000_050), fixture.Largest); // 999.9 nF and the stray
        Assert.Contains("ROUT:OPEN:ALL", box.Link.Lines);
        Assert.Contains("SYST:WATC 10", box.Link.Lines);
    }

    [Fact]
    public async Task A_change_breaks_before_it_makes_in_one_message()
    {
        var box = new FixtureBox();
        await using var fixture = await OpenAsync(box);
        Assert.Equal(new Capacitance(100_150), await fixture.SetAsync(new(100_150), default));
        Assert.Equal([13], box.Closed);
        Assert.Equal(new Capacitance(47_150), await fixture.SetAsync(new(47_150), default));
        Assert.StartsWith("ROUT:OPEN (@13);CLOS (@", box.RelayMessages.Last(), StringComparison.Ordinal);
        Assert.DoesNotContain(13, box.Closed);
    }

    [Fact]
    public async Task Nothing_is_switched_for_the_capacitance_that_is_set_already()
    {
        var box = new FixtureBox();
        await using var fixture = await OpenAsync(box);
        await fixture.SetAsync(new(33_150), default);
        var messages = box.RelayMessages.Count();
        await fixture.SetAsync(new(33_150), default);
        Assert.Equal(messages, box.RelayMessages.Count());
    }

    [Fact]
    public async Task A_relay_that_does_not_follow_is_named()
    {
        var box = new FixtureBox { Stuck = 13 };
        await using var fixture = await OpenAsync(box);
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => fixture.SetAsync(new(100_150), default));
        Assert.Equal(BenchFault.FixtureFault, fault.Kind);
        Assert.Contains("relay 13 told to close but read back open", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task After_the_watchdog_the_relays_are_read_back_and_set_anew_and_it_is_reported()
    {
        var box = new FixtureBox();
        await using var fixture = await OpenAsync(box);
        await fixture.SetAsync(new(100_250), default); // relays 1 and 13
        box.ExpireWatchdog();
        Assert.Equal(new Capacitance(100_350), await fixture.SetAsync(new(100_350), default));
        Assert.Equal(100_200,
            Calibrations.Ideal.RelaysPicofarads.Index().Where(relay => box.Closed.Contains(relay.Index + 1)).Sum(relay => relay.Item));
        Assert.Contains(_log.Lines, line => line.Contains("watchdog had opened every relay", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Relays_that_the_watchdog_has_opened_stand_no_more_until_they_are_set_anew()
    {
        var box = new FixtureBox();
        await using var fixture = await OpenAsync(box);
        await fixture.SetAsync(new(100_250), default);
        Assert.True(await fixture.StandsAsync(default));
        box.ExpireWatchdog();
        Assert.False(await fixture.StandsAsync(default));
        Assert.Empty(box.Errors);
        Assert.Contains(_log.Lines, line => line.Contains("Watchdog expired", StringComparison.Ordinal));
        await fixture.SetAsync(new(100_250), default);
        Assert.True(await fixture.StandsAsync(default));
        Assert.Equal([1, 13], box.Closed.Order());
    }

    [Fact]
    public async Task After_silence_the_question_is_repeated_and_the_relay_command_is_not()
    {
        var box = new FixtureBox();
        await using var fixture = await OpenAsync(box);
        box.SilentOnce = "*OPC?";
        var set = fixture.SetAsync(new(100_150), default);
        await box.Silent;
        await _time.ElapseAsync(new ExchangeOptions().QueryTimeout);
        await _time.ElapseAsync(new ExchangeOptions().QuietTime);
        Assert.Equal(new Capacitance(100_150), await set);
        Assert.Single(box.RelayMessages, "ROUT:CLOS (@13)");
        Assert.Equal(["*OPC?", "*IDN?", "*OPC?", "ROUT:CLOS:STAT?"], box.Link.Lines.TakeLast(4));
    }

    [Fact]
    public async Task After_a_cancelled_change_the_relays_are_read_before_the_next()
    {
        var box = new FixtureBox();
        await using var fixture = await OpenAsync(box);
        box.SilentOnce = "*OPC?";
        using var cancel = new CancellationTokenSource();
        var given_up = fixture.SetAsync(new(100_150), cancel.Token);
        await box.Silent;
        await cancel.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => given_up);

        var next = fixture.SetAsync(new(150), default);
        await _time.ElapseAsync(new ExchangeOptions().QuietTime);
        await next;
        Assert.Equal("ROUT:OPEN (@13)", box.RelayMessages.Last()); // known from the read-back alone
    }

    [Fact]
    public async Task The_calibration_of_another_fixture_is_refused_and_both_serial_numbers_named()
    {
        var box = new FixtureBox { Serial = "F-0099" };
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => OpenAsync(box));
        Assert.Equal(BenchFault.WrongCalibration, fault.Kind);
        Assert.Contains("F-0099", fault.Found, StringComparison.Ordinal);
        Assert.Contains("F-0007", fault.Expected, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_calibration_with_another_number_of_relays_is_refused()
    {
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => OpenAsync(new FixtureBox { Relays = 12 }));
        Assert.Equal(BenchFault.WrongCalibration, fault.Kind);
        Assert.Contains("12 relays", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_failed_self_test_stops_before_anything_is_switched()
    {
        var box = new FixtureBox { SelfTest = "4" };
        Assert.Equal(BenchFault.FixtureFault, (await Assert.ThrowsAsync<BenchFaultException>(() => OpenAsync(box))).Kind);
        Assert.Empty(box.RelayMessages);
    }

    [Fact] // SCPI-1999 wants a definite block, many switches send the bare list
    public async Task A_state_in_a_definite_block_is_understood()
    {
        var box = new FixtureBox { StateInBlock = true };
        await using var fixture = await OpenAsync(box);
        Assert.Equal(new Capacitance(100_250), await fixture.SetAsync(new(100_250), default));
        Assert.Equal([1, 13], box.Closed);
    }

    [Fact]
    public async Task Closing_opens_every_relay_and_may_happen_twice()
    {
        var box = new FixtureBox();
        var fixture = await OpenAsync(box);
        await fixture.SetAsync(new(100_150), default);
        await fixture.DisposeAsync();
        await fixture.DisposeAsync();
        Assert.Empty(box.Closed);
        Assert.True(box.Link.IsClosed);
        await fixture.OpenAllAsync(default);
    }

    [Fact]
    public async Task An_idle_fixtures_watchdog_is_fed()
    {
        var box = new FixtureBox();
        await using var fixture = await OpenAsync(box);
        for (var third = 0; third < 6; third++)
        {
            var fed = box.Link.LineAfterAsync(box.Link.Lines.Count);
            _time.Advance(Watchdog / 3);
            Assert.Equal("SYST:WATC?", await fed);
            await fixture.OpenAllAsync(default); // returns when the feeding exchange is over: one exchange at a time
        }
    }

    private Task<ScpiRelayFixture> OpenAsync(FixtureBox box) =>
        ScpiRelayFixture.OpenAsync(new(box.Link, new(), _time, _log), Calibrations.Ideal, Watchdog, _time, _log, default);
}
