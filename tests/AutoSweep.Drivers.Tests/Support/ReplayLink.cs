using System.Text;
using System.Threading.Channels;
using AutoSweep.Instruments.Links;

namespace AutoSweep.Drivers.Tests.Support;

/// <summary>A meter that answers what a session file says, and takes nothing that the file does not say.</summary>
public sealed class ReplayLink(string resource) : ILink
{
    private readonly Channel<byte[]> _toHost = Channel.CreateUnbounded<byte[]>();
    private Queue<string> _expected = new();

    public ResourceName Resource { get; } = ResourceName.Parse(resource);

    public IReadOnlyCollection<string> Left => _expected;

    public void Expect(IEnumerable<string> wire) => _expected = new(wire);

    public ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        foreach (var line in Encoding.ASCII.GetString(bytes.Span).Split('\n', StringSplitOptions.RemoveEmptyEntries))
            Take(line.TrimEnd('\r'));
        return ValueTask.CompletedTask;
    }

    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        var bytes = await _toHost.Reader.ReadAsync(cancellationToken);
        bytes.CopyTo(buffer);
        return bytes.Length;
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private void Take(string line)
    {
        var expected = _expected.Count > 0 ? _expected.Dequeue() : "nothing more";
        if (expected != $">{line}")
            throw new InvalidOperationException($"The driver sent \"{line}\"; the session has \"{expected}\".");
        while (_expected.TryPeek(out var reply) && reply[0] == '<')
            _toHost.Writer.TryWrite(Encoding.ASCII.GetBytes(_expected.Dequeue()[1..] + "\n"));
    }
}
