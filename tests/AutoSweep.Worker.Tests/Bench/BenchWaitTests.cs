using AutoSweep.Core;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class BenchWaitTests
{
    private static readonly BenchWiring Wiring = new() { Meter = "TCPIP::192.0.2.10::5025::SOCKET" };

    private readonly FakeTimeProvider _clock = new();
    private readonly BenchBoard _board = new();
    private readonly ConnectedBench _bench = new(Wiring, new FakeMeter(), null);
    private int _tries;

    [Theory]
    [InlineData(BenchFault.NotReachable)]
    [InlineData(BenchFault.NoAnswer)]
    public async Task It_tries_again_after_a_pause_until_the_bench_is_there(BenchFault kind)
    {
        var opening = new BenchWait(_board, _clock).OpenAsync(Wiring, Try(kind, failing: 2), CancellationToken.None);
        Assert.Equal(1, _tries);
        Assert.Equal(BenchActivity.NeedsYou, _board.Status.Activity);
        Assert.Contains("no meter there", _board.Status.Message, StringComparison.Ordinal);

        _clock.Advance(BenchWait.Pause);
        Assert.Equal(2, _tries);
        _clock.Advance(BenchWait.Pause);

        Assert.Same(_bench, await opening);
    }

    [Theory]
    [InlineData(BenchFault.WrongIdentity)]
    [InlineData(BenchFault.WrongCalibration)]
    [InlineData(BenchFault.BadFile)]
    [InlineData(BenchFault.FixtureFault)]
    public async Task What_no_waiting_mends_is_told_at_once(BenchFault kind)
    {
        var fault = await Assert.ThrowsAsync<BenchFaultException>(
            () => new BenchWait(_board, _clock).OpenAsync(Wiring, Try(kind, failing: 1), CancellationToken.None));

        Assert.Equal(kind, fault.Kind);
    }

    public static TheoryData<BenchWiring> Slips => new()
    {
        new BenchWiring(),
        new BenchWiring { Meter = "TCPIQ::192.0.2.10" },
        new BenchWiring { Meter = Wiring.Meter, Fixture = Wiring.Meter },
        new BenchWiring { Meter = Wiring.Meter, Fixture = "ASRL" },
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public Task A_slip_in_the_wiring_is_told_at_once(BenchWiring wiring) => Assert.ThrowsAsync<BenchFaultException>(
        () => new BenchWait(_board, _clock).OpenAsync(wiring, Try(BenchFault.NotReachable, failing: 1), CancellationToken.None));

    [Fact]
    public async Task The_waiting_ends_when_it_is_told_to()
    {
        using var end = new CancellationTokenSource();
        var opening = new BenchWait(_board, _clock).OpenAsync(Wiring, Try(BenchFault.NotReachable, failing: 9), end.Token);

        await end.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => opening);
    }

    private Func<CancellationToken, Task<ConnectedBench>> Try(BenchFault kind, int failing) => _ => ++_tries <= failing
        ? throw new BenchFaultException(kind, "no meter there", "a meter", "switch it on")
        : Task.FromResult(_bench);
}
