using System.Text;
using AutoSweep.Core;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Links;

/// <summary>Over a real pty of this machine; Linux only, elsewhere the facts that need one are skipped.</summary>
public sealed class SerialLinkTests
{
    [PtyFact]
    public async Task Bytes_go_both_ways_unchanged()
    {
        using var line = new PtyPair();
        await using var link = Open(line);
        await link.WriteAsync("ROUT:CLOS (@3)\n"u8.ToArray(), default);
        Assert.Equal("ROUT:CLOS (@3)\n", await line.ReceiveAsync(15));
        line.Send(0x00, 0x1A, 0x0D, 0x0A, 0xFF); // none of them means anything to a raw line
        Assert.Equal("00-1A-0D-0A-FF", BitConverter.ToString(await ReadAsync(link, 5)));
    }

    [PtyFact]
    public async Task A_cancelled_wait_loses_no_byte()
    {
        using var line = new PtyPair();
        await using var link = Open(line);
        using var cancel = new CancellationTokenSource();
        var waiting = link.ReadAsync(new byte[16], cancel.Token).AsTask();
        await cancel.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
        line.Send("12\n"u8.ToArray());
        Assert.Equal("12\n", Encoding.ASCII.GetString(await ReadAsync(link, 3)));
    }

    [PtyFact]
    public async Task An_unplugged_line_breaks_the_link()
    {
        using var line = new PtyPair();
        await using var link = Open(line);
        line.Dispose();
        await Assert.ThrowsAsync<IOException>(async () => await link.ReadAsync(new byte[16], default));
    }

    [PtyFact]
    public async Task A_message_to_an_unplugged_line_fails_and_closing_still_ends()
    {
        using var line = new PtyPair();
        var link = Open(line);
        line.Dispose();
        await Assert.ThrowsAsync<IOException>(async () => await link.ReadAsync(new byte[16], default));
        await Assert.ThrowsAsync<IOException>(async () => await link.WriteAsync("*IDN?\n"u8.ToArray(), default));
        await link.DisposeAsync().AsTask().WaitAsync(Patience.Limit, TimeProvider.System);
    }

    [PtyFact]
    public async Task Closing_ends_although_a_message_was_on_its_way_when_the_line_was_unplugged()
    {
        using var line = new PtyPair();
        var link = Open(line);
        line.Dispose();
        // Whether the port takes the bytes or refuses them is a race against its own watch on the line; closing must not hang on either.
        await Record.ExceptionAsync(async () => await link.WriteAsync("ROUT:OPEN:ALL\n"u8.ToArray(), default));
        await link.DisposeAsync().AsTask().WaitAsync(Patience.Limit, TimeProvider.System);
    }

    [Fact]
    public void A_port_that_is_not_there_is_a_fault_that_lists_those_that_are()
    {
        var fault = Assert.Throws<BenchFaultException>(() => SerialLink.Open(new("ASRL/dev/ttyNone::INSTR", "/dev/ttyNone"), new()));
        Assert.Equal(BenchFault.NotReachable, fault.Kind);
        Assert.Contains("/dev/ttyNone", fault.Found, StringComparison.Ordinal);
        Assert.Matches("(Ports here: |no serial ports)", fault.Found);
    }

    private static SerialLink Open(PtyPair line) => SerialLink.Open(new("test", line.Port), SerialSettings.Fixture);

    private static async Task<byte[]> ReadAsync(SerialLink link, int count)
    {
        var bytes = new byte[count];
        for (var got = 0; got < count;)
            got += await link.ReadAsync(bytes.AsMemory(got), default);
        return bytes;
    }
}
