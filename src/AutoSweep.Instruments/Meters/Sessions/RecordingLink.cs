using System.Text;
using AutoSweep.Instruments.Links;

namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>A link that keeps what goes over it, line by line.</summary>
/// <param name="link">The link to the meter, owned from now on.</param>
public sealed class RecordingLink(ILink link) : ILink
{
    private readonly Lock _lock = new();
    private readonly List<SessionLine> _lines = [];
    private readonly StringBuilder _reply = new();

    /// <inheritdoc/>
    public ResourceName Resource => link.Resource;

    /// <summary>Takes the lines since the last time.</summary>
    public IReadOnlyList<SessionLine> TakeLines()
    {
        lock (_lock)
        {
            SessionLine[] lines = [.. _lines];
            _lines.Clear();
            return lines;
        }
    }

    /// <inheritdoc/>
    public ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        Keep(bytes);
        return link.WriteAsync(bytes, cancellationToken);
    }

    /// <inheritdoc/>
    public ValueTask WriteQueryAsync(ReadOnlyMemory<byte> bytes, TimeSpan answerWithin, CancellationToken cancellationToken)
    {
        Keep(bytes);
        return link.WriteQueryAsync(bytes, answerWithin, cancellationToken);
    }

    private void Keep(ReadOnlyMemory<byte> bytes)
    {
        lock (_lock)
            foreach (var line in Encoding.ASCII.GetString(bytes.Span).Split(['\n', '\r'], StringSplitOptions.RemoveEmptyEntries))
                _lines.Add(new(0, true, line));
    }

    /// <inheritdoc/>
    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        var count = await link.ReadAsync(buffer, cancellationToken);
        lock (_lock)
            foreach (var letter in Encoding.Latin1.GetString(buffer.Span[..count]))
                Keep(letter);
        return count;
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => link.DisposeAsync();

    private void Keep(char letter)
    {
        if (letter is not ('\r' or '\n'))
        {
            _reply.Append(letter);
            return;
        }

        if (_reply.Length > 0)
            _lines.Add(new(0, false, _reply.ToString().Trim()));
        _reply.Clear();
    }
}
