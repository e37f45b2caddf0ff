using System.Text;
using System.Threading.Channels;
using AutoSweep.Instruments.Links;

namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>A meter that answers what a session says, and takes nothing that the session does not say.</summary>
/// <remarks>The first deviation breaks the link, so that nobody waits for an answer that the session does not have.</remarks>
internal sealed class ReplayLink(MeterDriver driver, string resource) : ILink
{
    // Smaller than the reader's buffer, so that a long reply comes in pieces.
    private const int PieceBytes = 1024;

    private readonly Channel<byte[]> _toHost = Channel.CreateUnbounded<byte[]>();
    private readonly HashSet<string> _readings = [.. driver.Queries()];
    private readonly string _terminator = driver.Link.ReplyTerminator == DriverTerminator.Cr ? "\r" : "\r\n";
    private Queue<SessionLine> _expected = new();
    private int _lineNumber;

    public ResourceName Resource { get; } = ResourceName.Parse(resource);

    /// <summary>The first thing that went otherwise than in the session.</summary>
    public SessionDeviation? Deviation { get; private set; }

    public void Expect(SessionStep step) => (_expected, _lineNumber) = (new(step.Wire), step.LineNumber);

    /// <summary>Notes what the session has and the driver has not sent.</summary>
    public void ExpectNothingMore()
    {
        if (_expected.TryPeek(out var left))
            Deviation ??= new(left.LineNumber, "the driver is done without this line", $"\"{left}\"");
    }

    public ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        foreach (var line in Encoding.ASCII.GetString(bytes.Span).Split(['\n', '\r'], StringSplitOptions.RemoveEmptyEntries))
            Take(line);
        return Deviation is null ? ValueTask.CompletedTask : throw Broken();
    }

    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        try
        {
            var bytes = await _toHost.Reader.ReadAsync(cancellationToken);
            bytes.CopyTo(buffer);
            return bytes.Length;
        }
        catch (ChannelClosedException)
        {
            throw Broken();
        }
    }

    public ValueTask DisposeAsync()
    {
        _toHost.Writer.TryComplete();
        return ValueTask.CompletedTask;
    }

    private static IOException Broken() => new("The session is left.");

    private void Take(string line)
    {
        var expected = _expected.TryDequeue(out var next) ? next : null;
        if (expected is not { ToMeter: true } || expected.Text != line)
        {
            Deviate(new(expected?.LineNumber ?? _lineNumber, $"the driver sends \"{line}\"",
                expected is null ? "nothing more for this call" : $"\"{expected}\""));
            return;
        }

        _lineNumber = expected.LineNumber;
        if (AsksForAnswer(line) && !(_expected.TryPeek(out var reply) && !reply.ToMeter))
            Deviate(new(_lineNumber, $"the driver waits for an answer to \"{line}\"", "a line with < after it"));
        while (_expected.TryPeek(out var answer) && !answer.ToMeter)
            Answer(_expected.Dequeue().Text);
    }

    private bool AsksForAnswer(string line) => _readings.Contains(line) || line.Split(' ')[0].EndsWith('?');

    private void Deviate(SessionDeviation deviation)
    {
        Deviation ??= deviation;
        _toHost.Writer.TryComplete();
    }

    private void Answer(string text)
    {
        foreach (var piece in Encoding.ASCII.GetBytes(text + _terminator).Chunk(PieceBytes))
            _toHost.Writer.TryWrite(piece);
    }
}
