using System.Text;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Tests.Support;
using AutoSweep.Sim.Wire;

namespace AutoSweep.Sim.Tests.Wire;

/// <summary>The meter's socket, with good and bad wires.</summary>
public class TcpPortTests
{
    [Fact]
    public async Task Merged_messages_are_answered_in_order()
    {
        await WithClientAsync(new(), async client =>
        {
            await client.SendAsync("*OPC?\n*TST?\r\nSYST:VERS?\n");
            Assert.Equal(["1", "0", "1999.0"], [await client.LineAsync(), await client.LineAsync(), await client.LineAsync()]);
        });
    }

    [Fact]
    public async Task A_message_may_come_byte_by_byte()
    {
        await WithClientAsync(new(), async client =>
        {
            foreach (var letter in "SYST:VERS?\r\n") await client.SendAsync(letter.ToString());
            Assert.Equal("1999.0", await client.LineAsync());
        });
    }

    [Fact]
    public async Task A_wire_may_fragment_replies_and_end_them_with_a_carriage_return()
    {
        await WithClientAsync(new() { Fragmented = true, CarriageReturn = true }, async client =>
        {
            await client.SendAsync("*IDN?\n");
            Assert.Equal("AutoSweep,Simulated bench meter,SIM-M-test,1.0\r", await client.LineAsync());
        });
    }

    [Fact]
    public async Task A_late_reply_comes_before_the_next_one()
    {
        await WithClientAsync(new() { LateEvery = 2, LateSeconds = 0.05 }, async client =>
        {
            await client.SendAsync("*OPC?\nSYST:VERS?\n*TST?\n");
            Assert.Equal(["1", "1999.0", "0"], [await client.LineAsync(), await client.LineAsync(), await client.LineAsync()]);
        });
    }

    [Fact]
    public async Task A_silent_meter_hears_but_does_not_answer()
    {
        var beeped = new TaskCompletionSource();
        await WithClientAsync(
            new() { Silent = true },
            async client =>
            {
                await client.SendAsync("*IDN?\nSYST:BEEP\n");
                await beeped.Task.WaitAsync(Patience.Limit, TimeProvider.System);
                Assert.False(client.HasBytes);
            },
            beeped.SetResult);
    }

    [Fact]
    public async Task A_message_that_comes_before_the_answer_interrupts_the_query()
    {
        await WithClientAsync(new(), async client =>
        {
            await client.SendAsync("TRIG:SOUR EXT\nREAD?\n");
            await client.SendAsync("SYST:ERR?\n");
            Assert.Equal("-410,\"Query INTERRUPTED\"", await client.LineAsync());
        });
    }

    [Fact]
    public async Task Clients_are_counted_as_they_come_and_go()
    {
        using var bench = new TestBench();
        using var port = new TcpPort(bench.Meter, new(), bench.Clock, 0);
        using var end = new CancellationTokenSource();
        var counts = System.Threading.Channels.Channel.CreateUnbounded<int>();
        port.Clients += by => counts.Writer.TryWrite(by);
        var serving = port.RunAsync(end.Token);
        using (new TcpClientLines(port.Port)) Assert.Equal(1, await counts.Reader.ReadAsync());
        Assert.Equal(-1, await counts.Reader.ReadAsync());
        await end.CancelAsync();
        await serving.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ContinueOnCapturedContext);
    }

    [Fact]
    public async Task Unplugged_it_cuts_its_clients_off_refuses_others_and_comes_back_on_the_same_port()
    {
        using var bench = new TestBench();
        var real = new Microsoft.Extensions.Time.Testing.FakeTimeProvider();
        using var port = new TcpPort(bench.Meter, new(), new Sim.Clock.SimulatedClock(1, real), 0);
        using var end = new CancellationTokenSource();
        var serving = port.RunAsync(end.Token);
        using var client = new TcpClientLines(port.Port);
        await client.SendAsync("CONF:VOLT:AC 1;*OPC?\n");
        Assert.Equal("1", await client.LineAsync());

        var gap = port.UnplugAsync(TimeSpan.FromSeconds(3), CancellationToken.None);

        await Assert.ThrowsAnyAsync<IOException>(client.LineAsync);
        Assert.ThrowsAny<System.Net.Sockets.SocketException>(() => new TcpClientLines(port.Port));
        real.Advance(TimeSpan.FromSeconds(3));
        await gap;
        using var again = new TcpClientLines(port.Port);
        await again.SendAsync("CONF?\n");
        Assert.Contains("VOLT:AC", await again.LineAsync(), StringComparison.Ordinal);
        await end.CancelAsync();
        await serving.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ContinueOnCapturedContext);
    }

    [Fact]
    public async Task Unplugged_without_an_end_it_comes_back_when_it_is_pushed_in()
    {
        using var bench = new TestBench();
        var real = new Microsoft.Extensions.Time.Testing.FakeTimeProvider();
        using var port = new TcpPort(bench.Meter, new(), new Sim.Clock.SimulatedClock(1, real), 0);
        using var end = new CancellationTokenSource();
        var serving = port.RunAsync(end.Token);

        for (var time = 0; time < 2; time++)
        {
            var gap = port.UnplugAsync(Timeout.InfiniteTimeSpan, CancellationToken.None);
            real.Advance(TimeSpan.FromDays(1));
            Assert.ThrowsAny<System.Net.Sockets.SocketException>(() => new TcpClientLines(port.Port));
            port.PushIn();
            await gap;
            using var again = new TcpClientLines(port.Port);
            await again.SendAsync("*OPC?\n");
            Assert.Equal("1", await again.LineAsync());
        }

        await end.CancelAsync();
        await serving.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ContinueOnCapturedContext);
    }

    private static async Task WithClientAsync(WireDefinition wire, Func<TcpClientLines, Task> talk, Action? beeped = null)
    {
        using var bench = new TestBench();
        bench.Meter.Beeped += _ => beeped?.Invoke();
        var clock = new Sim.Clock.SimulatedClock(1);
        using var port = new TcpPort(bench.Meter, wire, clock, 0);
        using var end = new CancellationTokenSource();
        var serving = port.RunAsync(end.Token);
        using (var client = new TcpClientLines(port.Port)) await talk(client);
        await end.CancelAsync();
        await serving.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ContinueOnCapturedContext);
    }
}
