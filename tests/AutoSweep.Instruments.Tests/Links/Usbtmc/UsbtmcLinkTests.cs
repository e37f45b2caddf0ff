using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Links.Usbtmc;
using AutoSweep.Instruments.Scpi;
using AutoSweep.Instruments.Tests.Support;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Instruments.Tests.Links.Usbtmc;

/// <summary>Request numbers and behaviour: the Linux kernel's include/uapi/linux/usb/tmc.h and drivers/usb/class/usbtmc.c.</summary>
public sealed class UsbtmcLinkTests
{
    private const uint StatusByteAndRemote = 4 | 2;

    // For tests of silence. All else has the patience of a test: a machine that is busy elsewhere is no silent instrument.
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(1);

    [Theory]
    [InlineData(null)]
    [InlineData(0u)]
    [InlineData(StatusByteAndRemote)]
    public async Task An_instrument_is_asked_and_answers_and_has_nothing_to_complain_about(uint? capabilities)
    {
        var meter = new FakeUsbtmcFile(Answer) { Capabilities = capabilities };
        await using (var session = Open(meter))
        {
            Assert.Equal("M1", (await session.IdentifyAsync(default)).Model);
            await session.SendAsync("*RST", default);
            Assert.Equal("+1.2E-03", await session.QueryAsync("READ?", default));
        }

        Assert.Equal(["*IDN?\n", "*RST\n", "READ?\n"], meter.Messages); // each in one piece
        Assert.Equal((0, 0, true), (meter.UnaskedReads, meter.Interrupted, meter.IsClosed));
    }

    [Fact]
    public async Task An_instrument_that_can_is_put_under_remote_control_and_given_back()
    {
        var meter = new FakeUsbtmcFile(Answer) { Capabilities = StatusByteAndRemote };
        await Open(meter).DisposeAsync();
        Assert.Equal([UsbtmcRequest.Get488Capabilities, UsbtmcRequest.RemoteEnable, UsbtmcRequest.GoToLocal], meter.Requests);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task An_answer_in_several_transfers_is_put_together(bool tellsEnds)
    {
        var meter = new FakeUsbtmcFile(Answer) { Transfer = 4, TellsEnds = tellsEnds };
        await using var session = Open(meter);
        Assert.Equal("Invented Instruments,M1,77,1.0", await session.QueryAsync("*IDN?", default));
    }

    [Fact]
    public async Task An_answer_that_ends_with_the_end_mark_alone_gets_the_terminator()
    {
        await using var session = Open(new(_ => "+1.2E-03"));
        Assert.Equal("+1.2E-03", await session.QueryAsync("READ?", default));
    }

    [Theory]
    [InlineData(null)]
    [InlineData(StatusByteAndRemote)]
    public async Task After_silence_the_transfer_is_aborted_and_the_instrument_cleared_before_it_is_asked_again(uint? capabilities)
    {
        var meter = new FakeUsbtmcFile(line => line == "READ?" ? null : Answer(line)) { Capabilities = capabilities };
        await using var session = Open(meter);
        await session.IdentifyAsync(default);
        var silence = await Assert.ThrowsAsync<BenchFaultException>(() => session.QueryAsync("READ?", default, Soon));
        Assert.Equal(BenchFault.NoAnswer, silence.Kind);
        Assert.Equal("2.5", await session.QueryAsync("FREQ?", default));
        var abort = meter.Requests.IndexOf(UsbtmcRequest.AbortBulkIn);
        Assert.InRange(abort, 0, meter.Requests.Count - 2);
        Assert.Equal(UsbtmcRequest.Clear, meter.Requests[abort + 1]);
        Assert.Equal(0, meter.Interrupted);
    }

    [Fact]
    public async Task An_answer_of_another_request_is_not_taken_and_the_next_try_succeeds()
    {
        var time = new ObservedTime();
        var meter = new FakeUsbtmcFile(Answer);
        await using var session = Open(meter, time);
        await session.IdentifyAsync(default);
        meter.FallOutOfStep();
        var answer = session.QueryAsync("FREQ?", default, Soon);
        await meter.Cleared.WaitAsync(Patience.Limit, TimeProvider.System);
        await time.ElapseAsync(Soon);
        await time.ElapseAsync(new ExchangeOptions().QuietTime);
        Assert.Equal("2.5", await answer);
    }

    [Fact]
    public async Task The_driver_waits_as_long_as_the_reading_may_take()
    {
        var meter = new FakeUsbtmcFile(Answer);
        await using var session = Open(meter, new ObservedTime());
        await session.QueryAsync("READ?", default, TimeSpan.FromSeconds(55));
        Assert.Equal(TimeSpan.FromSeconds(55), meter.Timeouts[^1]); // what is left of it on a clock that stands still
    }

    [Theory]
    [InlineData(null)]
    [InlineData(StatusByteAndRemote)]
    public async Task An_unplugged_instrument_is_a_link_that_broke(uint? capabilities)
    {
        var asked = new TaskCompletionSource();
        var meter = new FakeUsbtmcFile(line =>
        {
            asked.TrySetResult();
            return null;
        }) { Capabilities = capabilities };
        await using var session = Open(meter);
        var reading = session.QueryAsync("READ?", default, TimeSpan.FromHours(1));
        await asked.Task.WaitAsync(Patience.Limit, TimeProvider.System);
        meter.Unplug();
        var lost = await Assert.ThrowsAsync<BenchFaultException>(() => reading.WaitAsync(Patience.Limit, TimeProvider.System));
        Assert.Equal(BenchFault.NotReachable, lost.Kind);
        Assert.Contains("unplugged", lost.Found, StringComparison.Ordinal);
        await Assert.ThrowsAsync<BenchFaultException>(() => session.SendAsync("*RST", default));
    }

    [Fact]
    public async Task Where_the_status_byte_tells_a_wait_that_is_given_up_ends_at_once()
    {
        var asked = new TaskCompletionSource();
        var meter = new FakeUsbtmcFile(line =>
        {
            if (line != "READ?")
                return Answer(line);
            asked.TrySetResult();
            return null;
        }) { Capabilities = StatusByteAndRemote };
        await using var session = Open(meter);
        await session.IdentifyAsync(default);
        using var cancel = new CancellationTokenSource();
        var reading = session.QueryAsync("READ?", cancel.Token, TimeSpan.FromHours(1));
        await asked.Task.WaitAsync(Patience.Limit, TimeProvider.System);
        await cancel.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => reading);
        Assert.Equal("2.5", await session.QueryAsync("FREQ?", default).WaitAsync(Patience.Limit, TimeProvider.System));
    }

    [PtyFact]
    public async Task A_device_file_carries_messages_both_ways_and_says_when_it_is_gone()
    {
        using var line = new PtyPair(); // stands in for the device file; it knows none of the driver's requests
        line.MakeRaw();
        await using var link = await new LinkOpener(TimeProvider.System).OpenAsync(
            new UsbtmcFileResource("test", line.Port), new(new()), default);
        await link.WriteQueryAsync("*IDN?\n"u8.ToArray(), Patience.Limit, default);
        Assert.Equal("*IDN?\n", await line.ReceiveAsync(6));
        line.Send("A,B\n"u8.ToArray());
        var buffer = new byte[16];
        Assert.Equal(4, await link.ReadAsync(buffer, default));
        line.Dispose();
        await Assert.ThrowsAsync<IOException>(async () => await link.WriteAsync("*RST\n"u8.ToArray(), default));
    }

    [PtyFact]
    public async Task A_device_file_that_is_not_there_is_a_fault()
    {
        var fault = await Assert.ThrowsAsync<BenchFaultException>(async () =>
            await new LinkOpener(TimeProvider.System).OpenAsync(ResourceName.Parse("/dev/usbtmc9999"), new(new()), default));
        Assert.Equal(BenchFault.NotReachable, fault.Kind);
        Assert.Contains("/dev/usbtmc9999", fault.Found, StringComparison.Ordinal);
    }

    private static ScpiSession Open(FakeUsbtmcFile meter, TimeProvider? time = null)
    {
        var exchange = new ExchangeOptions { QueryTimeout = Patience.Limit, Retries = 1 };
        var link = UsbtmcLink.Over(meter, ResourceName.Parse("/dev/usbtmc0"), new(new()), time ?? TimeProvider.System);
        return new(link, new() { Exchange = exchange }, time ?? TimeProvider.System, NullLogger.Instance);
    }

    private static string? Answer(string line) => line switch
    {
        "*IDN?" => "Invented Instruments,M1,77,1.0\n",
        "READ?" => "+1.2E-03\n",
        "FREQ?" => "2.5\n",
        _ => null,
    };
}
