using System.Text;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Tests.Support;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Instruments.Tests.Links;

public sealed class AnswerFetcherTests
{
    private static readonly TimeSpan Within = TimeSpan.FromMinutes(1);

    // The caller adds a message and then gives up what is read for earlier ones; the thread may by then be waiting for that very message's answer.
    [Fact]
    public async Task A_caller_who_is_late_to_give_earlier_answers_up_leaves_the_one_to_its_own_message_alone()
    {
        var port = new BlockingPort();
        var fetcher = New(port);
        var answer = Task.Run(() => fetcher.Fetch(7, Within));
        await port.Reading;

        fetcher.GiveUpBefore(7);
        port.Answers("1.25\n");

        Assert.Equal("1.25\n", Encoding.ASCII.GetString(await answer.WaitAsync(Patience.Limit, TimeProvider.System)));
        Assert.Equal((0, 0), (port.Interruptions, port.Clears));
    }

    [Fact]
    public async Task The_next_message_ends_the_wait_for_the_answer_before_it_with_a_device_clear()
    {
        var port = new BlockingPort();
        var fetcher = New(port);
        var answer = Task.Run(() => fetcher.Fetch(7, Within));
        await port.Reading;

        fetcher.GiveUpBefore(8);

        Assert.Empty(await answer.WaitAsync(Patience.Limit, TimeProvider.System));
        Assert.Equal((1, 1), (port.Interruptions, port.Clears));
    }

    [Fact]
    public void Where_nothing_is_read_nothing_is_interrupted()
    {
        var port = new BlockingPort();
        New(port).GiveUpBefore(long.MaxValue);
        Assert.Equal(0, port.Interruptions);
    }

    [Fact]
    public void An_instrument_whose_first_answer_is_looked_for_late_still_counts_as_one_that_announces_it()
    {
        var time = new FakeTimeProvider();
        var port = new AnnouncingPort(time) { PauseBeforeStatus = TimeSpan.FromSeconds(5) };
        var fetcher = new AnswerFetcher(port, (byte)'\n', time, _ => false);
        fetcher.Fetch(1, Within);

        port.NotYet = 3;
        fetcher.Fetch(2, Within);

        Assert.Equal([1, 4], port.StatusesBeforeReads);
    }

    private static AnswerFetcher New(BlockingPort port) => new(port, (byte)'\n', TimeProvider.System, _ => false);

    /// <summary>An interface with a status byte, which is asked for after a pause.</summary>
    private sealed class AnnouncingPort(FakeTimeProvider time) : IMessagePort
    {
        private int _statuses;

        public TimeSpan PauseBeforeStatus { get; init; }

        /// <summary>How many times the status byte says that there is no answer yet.</summary>
        public int NotYet { get; set; }

        public List<int> StatusesBeforeReads { get; } = [];

        public bool IsStream => false;

        public void Write(ReadOnlySpan<byte> message, TimeSpan timeout)
        {
        }

        public int Read(Span<byte> buffer, TimeSpan timeout, out bool ended)
        {
            StatusesBeforeReads.Add(_statuses);
            _statuses = 0;
            ended = true;
            return Encoding.ASCII.GetBytes("1.25\n", buffer);
        }

        public byte? ReadStatusByte()
        {
            time.Advance(PauseBeforeStatus);
            _statuses++;
            return (byte)(NotYet-- > 0 ? 0 : 0x10);
        }

        public void Clear()
        {
        }

        public void Interrupt()
        {
        }

        public void Dispose()
        {
        }
    }

    /// <summary>An interface without a status byte, whose reads block until an answer comes or they are interrupted.</summary>
    private sealed class BlockingPort : IMessagePort
    {
        private readonly TaskCompletionSource _reading = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly TaskCompletionSource<string?> _answer = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Task Reading => _reading.Task;

        public int Interruptions { get; private set; }

        public int Clears { get; private set; }

        public bool IsStream => false;

        public void Answers(string text) => _answer.TrySetResult(text);

        public void Write(ReadOnlySpan<byte> message, TimeSpan timeout)
        {
        }

        public int Read(Span<byte> buffer, TimeSpan timeout, out bool ended)
        {
            _reading.TrySetResult();
            ended = true;
            return Encoding.ASCII.GetBytes(_answer.Task.GetAwaiter().GetResult() ?? throw new TimeoutException("interrupted"), buffer);
        }

        public byte? ReadStatusByte() => null;

        public void Clear() => Clears++;

        public void Interrupt()
        {
            Interruptions++;
            _answer.TrySetResult(null);
        }

        public void Dispose()
        {
        }
    }
}
