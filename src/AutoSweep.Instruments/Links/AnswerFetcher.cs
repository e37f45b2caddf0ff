namespace AutoSweep.Instruments.Links;

/// <summary>Fetches one answer through a message port.</summary>
/// <remarks>
/// Where an instrument's status byte says that an answer is there (MAV, IEEE 488.2, 11.2.1.2), it is read only then: no read ever blocks,
/// and a wait can be given up at once. Whether it says so is learned from the first answer; where it does not, a blocking read with the
/// answer's own time is used.
/// </remarks>
/// <param name="port">The port.</param>
/// <param name="terminator">Added to an answer that ends without it.</param>
/// <param name="time">The clock.</param>
/// <param name="nextMessageWaits">Waits for so long at most, and tells whether the answer is to be given up.</param>
internal sealed class AnswerFetcher(IMessagePort port, byte terminator, TimeProvider time, Func<TimeSpan, bool> nextMessageWaits)
{
    private const byte MessageAvailable = 0x10;

    // *IDN? is the first query, and answered in milliseconds (bench practice, no source).
    private static readonly TimeSpan Learning = TimeSpan.FromMilliseconds(300);

    // A reading takes 0.1 s and more; a status byte comes in a millisecond or two.
    private static readonly TimeSpan PollPause = TimeSpan.FromMilliseconds(10);

    // The interface's own time-out for an answer that is announced, and for the rest of one that has begun.
    private static readonly TimeSpan ShortestRead = TimeSpan.FromMilliseconds(500);

    // Bounds how long a message waits on a stream whose library cannot interrupt a read.
    private static readonly TimeSpan Moment = TimeSpan.FromMilliseconds(50);

    // A stream is listened to for whatever comes: any message ends that.
    private const long NoMessage = 0;

    private readonly byte[] _buffer = new byte[4096];
    private readonly Lock _reading = new();
    private long? _readingFor;
    private bool? _announces;

    /// <summary>Waits for an answer; after its time, or when the next message waits, gives it up with a device clear.</summary>
    /// <param name="message">The number of the message that it answers.</param>
    /// <param name="within">Its time.</param>
    /// <returns>The answer with its terminator; empty when there is none.</returns>
    /// <exception cref="IOException">The link broke.</exception>
    public byte[] Fetch(long message, TimeSpan within)
    {
        var begin = time.GetTimestamp();
        try
        {
            if (IsThere(begin, within))
                return Read(message, begin, within);
        }
        catch (TimeoutException)
        {
            // Given up below.
        }

        port.Clear();
        return [];
    }

    /// <summary>Takes what has come on a stream, or comes in a moment.</summary>
    /// <exception cref="IOException">The link broke.</exception>
    public byte[] Listen()
    {
        try
        {
            return _buffer[..ReadSome(NoMessage, Moment, out _)];
        }
        catch (TimeoutException)
        {
            return [];
        }
    }

    /// <summary>Called from another thread: ends a read that blocks, and nothing else that the port may be doing.</summary>
    /// <param name="message">The number of the message that waits. Its own answer may be waited for already when this is called: that read goes on.</param>
    public void GiveUpBefore(long message)
    {
        lock (_reading)
        {
            if (_readingFor < message)
                port.Interrupt();
        }
    }

    private byte[] Read(long message, long begin, TimeSpan within)
    {
        List<byte> answer = [];
        for (var ended = false; !ended;)
        {
            var left = within - time.GetElapsedTime(begin);
            var count = ReadSome(message, left > ShortestRead ? left : ShortestRead, out ended);
            answer.AddRange(_buffer.AsSpan(0, count));
        }

        if (answer.Count == 0 || answer[^1] != terminator)
            answer.Add(terminator);
        return [.. answer];
    }

    private int ReadSome(long message, TimeSpan timeout, out bool ended)
    {
        Say(message);
        try
        {
            return port.Read(_buffer, timeout, out ended);
        }
        finally
        {
            Say(null);
        }
    }

    private void Say(long? readingFor)
    {
        lock (_reading)
            _readingFor = readingFor;
    }

    // True too where nothing is known: then the read itself waits.
    private bool IsThere(long begin, TimeSpan within)
    {
        while (_announces != false)
        {
            var status = port.ReadStatusByte();
            var waited = time.GetElapsedTime(begin);
            // First of all: an answer that is announced was announced, however late this thread comes to look.
            if ((status & MessageAvailable) > 0)
                return (_announces = true).Value;
            else if (status is null || (_announces is null && waited > Learning))
                _announces = false;
            else if (waited > within || nextMessageWaits(PollPause))
                return false;
        }

        return !nextMessageWaits(TimeSpan.Zero);
    }
}
