using AutoSweep.Core;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Fixture;

public sealed class ScpiRelayBoxTests
{
    private readonly ObservedTime _time = new();
    private readonly LogLines _log = new();

    [Fact]
    public async Task A_box_without_a_calibration_closes_exactly_what_it_is_told()
    {
        var box = new FixtureBox();
        await using var relays = await OpenAsync(box);
        Assert.Equal(("F-0007", 16), (relays.Serial, relays.RelayCount));
        await relays.CloseExactlyAsync(new(0b1000_0000_0000_0101), default);
        Assert.Equal([1, 3, 16], box.Closed);
        await relays.CloseExactlyAsync(new(0b1), default);
        Assert.Equal([1], box.Closed);
        await relays.CloseExactlyAsync(RelaySet.None, default);
        Assert.Empty(box.Closed);
    }

    [Fact]
    public async Task Closing_the_box_opens_its_relays()
    {
        var box = new FixtureBox();
        await using (var relays = await OpenAsync(box))
            await relays.CloseExactlyAsync(new(0xFFFF), default);
        Assert.Empty(box.Closed);
    }

    [Fact]
    public async Task A_relay_that_reads_back_otherwise_is_named()
    {
        await using var relays = await OpenAsync(new() { Stuck = 3 });
        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => relays.CloseExactlyAsync(new(0b100), default));
        Assert.Contains("relay 3", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_number_of_relays_that_is_none_is_refused() =>
        Assert.Equal(BenchFault.NoAnswer, (await Assert.ThrowsAsync<BenchFaultException>(() => OpenAsync(new() { Relays = 0 }))).Kind);

    private Task<ScpiRelayBox> OpenAsync(FixtureBox box) =>
        ScpiRelayBox.OpenAsync(new(box.Link, new(), _time, _log), TimeSpan.FromSeconds(10), _time, _log, default);
}
