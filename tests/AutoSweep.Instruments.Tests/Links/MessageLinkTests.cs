using System.Text;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Tests.Support;

namespace AutoSweep.Instruments.Tests.Links;

public sealed class MessageLinkTests
{
    private static readonly TimeSpan AnHour = TimeSpan.FromHours(1);

    // The link's thread may be anywhere between "about to read" and the read that the interface can interrupt.
    [Fact]
    public async Task A_message_goes_out_although_the_interruption_came_just_before_the_read_began()
    {
        var port = new PortThatReadsLate();
        await using var link = Over(port);
        await link.WriteQueryAsync("READ?\n"u8.ToArray(), AnHour, default);
        await port.Reading.WaitAsync(Patience.Limit, TimeProvider.System);

        await link.WriteAsync("*RST\n"u8.ToArray(), default).AsTask().WaitAsync(Patience.Limit, TimeProvider.System);

        Assert.Equal(["READ?\n", "*RST\n"], port.Messages);
        Assert.Equal(1, port.Lost);
    }

    [Fact]
    public async Task Closing_ends_a_read_that_began_just_after_the_interruption()
    {
        var port = new PortThatReadsLate();
        var link = Over(port);
        await link.WriteQueryAsync("READ?\n"u8.ToArray(), AnHour, default);
        await port.Reading.WaitAsync(Patience.Limit, TimeProvider.System);

        await link.DisposeAsync();

        await port.Closed.WaitAsync(Patience.Limit, TimeProvider.System);
    }

    private static MessageLink Over(PortThatReadsLate port) => new(ResourceName.Parse("/dev/usbtmc0"), port, '\n', TimeProvider.System);

    /// <summary>Its read can be interrupted only after an interruption was lost on it.</summary>
    private sealed class PortThatReadsLate : IMessagePort
    {
        private readonly SemaphoreSlim _interruptions = new(0);
        private readonly TaskCompletionSource _reading = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly TaskCompletionSource _closed = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public List<string> Messages { get; } = [];

        public int Lost { get; private set; }

        public Task Reading => _reading.Task;

        public Task Closed => _closed.Task;

        public bool IsStream => false;

        public void Write(ReadOnlySpan<byte> message, TimeSpan timeout) => Messages.Add(Encoding.ASCII.GetString(message));

        public int Read(Span<byte> buffer, TimeSpan timeout, out bool ended)
        {
            ended = true;
            _reading.TrySetResult();
            _interruptions.Wait();
            Lost++;
            _interruptions.Wait();
            throw new TimeoutException("interrupted");
        }

        public byte? ReadStatusByte() => null;

        public void Clear()
        {
        }

        public void Interrupt() => _interruptions.Release();

        public void Dispose() => _closed.TrySetResult();
    }
}
