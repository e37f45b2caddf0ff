using System.Text;
using System.Threading.Channels;
using AutoSweep.Instruments.Links;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A meter on GPIB as a VISA library reaches it: its link breaks when the test says so, with VISA's own status.</summary>
internal sealed class FakeVisaMeter(string identity) : ILink
{
    /// <summary>VI_ERROR_CONN_LOST (VPP-4.3, table of completion and error codes).</summary>
    public const string ConnectionLost = "VI_ERROR_CONN_LOST (0xBFFF00A6): the connection for this session has been lost";

    private readonly Channel<byte[]> _answers = Channel.CreateUnbounded<byte[]>();
    private bool _silent;
    private bool _lost;

    public ResourceName Resource { get; } = ResourceName.Parse("GPIB0::22::INSTR");

    public List<string> Lines { get; } = [];

    public bool IsClosed { get; private set; }

    /// <summary>Called when it was asked for a reading and will not answer.</summary>
    public Action? Unanswered { get; init; }

    public void Lose()
    {
        _lost = true;
        _answers.Writer.TryComplete(new IOException(ConnectionLost));
    }

    /// <summary>Answers no reading any more, and everything else.</summary>
    public void FallSilent() => _silent = true;

    public ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        if (_lost)
            throw new IOException(ConnectionLost);
        foreach (var line in Encoding.ASCII.GetString(bytes.Span).Split('\n', StringSplitOptions.RemoveEmptyEntries))
            Take(line);
        return ValueTask.CompletedTask;
    }

    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        try
        {
            var bytes = await _answers.Reader.ReadAsync(cancellationToken);
            bytes.CopyTo(buffer);
            return bytes.Length;
        }
        catch (ChannelClosedException exception)
        {
            throw exception.InnerException ?? new IOException("closed");
        }
    }

    public ValueTask DisposeAsync()
    {
        IsClosed = true;
        _answers.Writer.TryComplete();
        return ValueTask.CompletedTask;
    }

    private void Take(string line)
    {
        Lines.Add(line);
        var answer = line switch
        {
            "*IDN?" => identity,
            "SYST:ERR?" => "+0,\"No error\"",
            "READ?" when !_silent => "+1.0E-02",
            _ => null,
        };
        if (answer is not null)
            _answers.Writer.TryWrite(Encoding.ASCII.GetBytes(answer + "\n"));
        else if (line == "READ?")
            Unanswered?.Invoke();
    }
}
