using AutoSweep.Core;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class BenchWaitTests
{
    private static readonly BenchWiring Wiring = new() { Meter = "TCPIP::192.0.2.10::5025::SOCKET", Fixture = "ASRL/dev/ttyUSB0::INSTR" };

    private readonly TimerSignals _clock = new();
    private readonly BenchBoard _board = new();
    private readonly List<BenchStatus> _shown = [];
    private readonly Queue<BenchFaultException> _faults = [];
    private int _tries;

    public BenchWaitTests() => _board.Changed += _shown.Add;

    [Fact]
    public async Task An_instrument_that_is_not_there_yet_is_waited_for_with_a_try_every_five_seconds_and_what_is_missing_is_said()
    {
        Finds(Fault(BenchFault.NotReachable, "nobody at 192.0.2.10"), Fault(BenchFault.NoAnswer, "the fixture is silent"));

        var opening = OpenAsync();
        Assert.Equal(TimeSpan.FromSeconds(5), await _clock.SomebodyWaitsAsync());
        Assert.Equal((1, "Waiting for the bench: nobody at 192.0.2.10. Switch it on."), (_tries, _board.Status.Message));
        _clock.Advance(TimeSpan.FromSeconds(5));
        Assert.Equal(TimeSpan.FromSeconds(5), await _clock.SomebodyWaitsAsync());
        Assert.Equal((2, "Waiting for the bench: the fixture is silent. Switch it on."), (_tries, _board.Status.Message));
        Assert.False(opening.IsCompleted);
        _clock.Advance(TimeSpan.FromSeconds(5));

        Assert.NotNull(await opening);
        Assert.Equal(3, _tries);
        Assert.All(_shown, status => Assert.Equal(BenchActivity.NeedsYou, status.Activity));
    }

    [Fact]
    public async Task It_is_waited_for_without_end()
    {
        Finds([.. Enumerable.Repeat(Fault(BenchFault.NotReachable, "nobody"), 1000)]);

        await _clock.PassUntilAsync(OpenAsync());

        Assert.Equal(1001, _tries);
        Assert.Equal(5000, (_clock.GetUtcNow() - _clock.Start).TotalSeconds);
    }

    [Fact]
    public async Task Nothing_is_said_where_the_bench_is_there()
    {
        await OpenAsync();

        Assert.Empty(_shown);
    }

    [Theory]
    [InlineData(BenchFault.WrongIdentity)]
    [InlineData(BenchFault.WrongCalibration)]
    [InlineData(BenchFault.FixtureFault)]
    public async Task What_waiting_does_not_mend_is_told_at_once(BenchFault kind)
    {
        Finds(Fault(kind, "another"));

        Assert.Equal(kind, (await Assert.ThrowsAsync<BenchFaultException>(() => OpenAsync())).Kind);

        Assert.Empty(_shown);
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData("TCPIQ::192.0.2.10::5025::SOCKET", null)]
    [InlineData("TCPIP::192.0.2.10::5025::SOCKET", "ASRLQ::")]
    [InlineData("ASRL/dev/ttyUSB0::INSTR", "ASRL/dev/ttyUSB0::INSTR")]
    public async Task A_slip_in_the_wiring_is_told_at_once(string? meter, string? fixture)
    {
        Finds(Fault(BenchFault.NotReachable, "nobody"));

        await Assert.ThrowsAsync<BenchFaultException>(() => OpenAsync(new() { Meter = meter, Fixture = fixture }));

        Assert.Equal(1, _tries);
    }

    [Fact]
    public async Task The_person_can_stop_the_wait()
    {
        using var stop = new CancellationTokenSource();
        Finds(Fault(BenchFault.NotReachable, "nobody"));
        var opening = OpenAsync(cancellationToken: stop.Token);
        await _clock.SomebodyWaitsAsync();

        await stop.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => opening);
        Assert.Equal(1, _tries);
    }

    private static BenchFaultException Fault(BenchFault kind, string found) => new(kind, found, "a bench", "Switch it on");

    private void Finds(params BenchFaultException[] faults) => Array.ForEach(faults, _faults.Enqueue);

    private Task<ConnectedBench> OpenAsync(BenchWiring? wiring = null, CancellationToken cancellationToken = default) =>
        new BenchWait(_board, _clock).OpenAsync(wiring ?? Wiring, _ =>
        {
            _tries++;
            return _faults.TryDequeue(out var fault) ? throw fault : Task.FromResult(new ConnectedBench(Wiring, new FakeMeter(), null));
        }, cancellationToken);
}
