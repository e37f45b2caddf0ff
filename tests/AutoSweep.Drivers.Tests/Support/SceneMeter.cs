using System.Text;
using System.Threading.Channels;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Meters.Sessions;

namespace AutoSweep.Drivers.Tests.Support;

/// <summary>A meter that says what a scene's session says, and gets into whatever trouble a test wants.</summary>
public sealed class SceneMeter(DriverScene scene, InstantTime time, bool serial) : ILink
{
    private readonly Channel<byte[]> _toHost = Channel.CreateUnbounded<byte[]>();
    private readonly Lock _lock = new();
    private readonly List<string> _sent = [];
    private readonly Queue<string> _late = new();
    private readonly SemaphoreSlim _withheld = new(0);
    private TaskCompletionSource _idle = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public ResourceName Resource { get; } =
        ResourceName.Parse(serial ? "ASRL/dev/ttySCENE::INSTR" : "TCPIP::meter.test::5025::SOCKET");

    /// <summary>What it answers to <c>*IDN?</c>.</summary>
    public string Identity { get; set; } = scene.Answers["*IDN?"];

    /// <summary>What it answers to the scene's query, one after the other; the last for ever.</summary>
    public Queue<string> Readings { get; } = new([scene.Reply]);

    /// <summary>Messages that it does not answer.</summary>
    public HashSet<string> Unanswered { get; } = [];

    /// <summary>Messages that it refuses, by its error queue.</summary>
    public HashSet<string> Refused { get; } = [];

    /// <summary>What its error queue holds.</summary>
    public Queue<string> Errors { get; } = [];

    /// <summary>Whether the next answer to the scene's query comes only before the next answer of all.</summary>
    public bool IsLate { get; set; }

    /// <summary>Whether a late answer strikes the time-out, or leaves the host waiting.</summary>
    public bool Strikes { get; set; } = true;

    /// <summary>Into pieces of how many bytes its answers are cut; 0 leaves them whole.</summary>
    public int PieceBytes { get; set; }

    /// <summary>What comes right behind an answer to the scene's query.</summary>
    public string Behind { get; set; } = "";

    public IReadOnlyList<string> Sent
    {
        get
        {
            lock (_lock)
                return [.. _sent];
        }
    }

    private string Terminator => scene.Driver.Link.ReplyTerminator == DriverTerminator.Cr ? "\r" : "\n";

    /// <summary>Says a line that nobody has asked for; done when the host has taken it in.</summary>
    public Task SayUnaskedAsync(string line)
    {
        Say(line + Terminator);
        lock (_lock)
            return _idle.Task;
    }

    /// <summary>Done when an answer is being withheld.</summary>
    public Task WithheldAsync() => _withheld.WaitAsync();

    public ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        foreach (var line in Encoding.ASCII.GetString(bytes.Span).Split(['\n', '\r'], StringSplitOptions.RemoveEmptyEntries))
            Take(line);
        return ValueTask.CompletedTask;
    }

    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        lock (_lock)
            if (!_toHost.Reader.TryPeek(out _))
                _idle.TrySetResult();
        var bytes = await _toHost.Reader.ReadAsync(cancellationToken);
        bytes.CopyTo(buffer);
        return bytes.Length;
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private void Take(string line)
    {
        lock (_lock)
            _sent.Add(line);
        if (Unanswered.Contains(line))
            Strike();
        else if (Refused.Contains(line))
            Errors.Enqueue(scene.Refusal);
        else if (line == scene.Query)
            Read();
        else if (AnswerTo(line) is { } answer)
            Answer(answer + Terminator);
    }

    private string? AnswerTo(string line) =>
        line == "*IDN?" ? Identity
        : line == scene.Driver.ErrorQuery && Errors.TryDequeue(out var error) ? error
        : scene.Answers.GetValueOrDefault(line);

    private void Read()
    {
        var reading = (Readings.Count > 1 ? Readings.Dequeue() : Readings.Peek()) + Terminator + Behind;
        if (!IsLate)
        {
            Answer(reading);
            return;
        }

        IsLate = false;
        _late.Enqueue(reading);
        if (Strikes)
            Strike();
        _withheld.Release();
    }

    // Not on the host's own thread: it is still sending.
    private void Strike() => ThreadPool.QueueUserWorkItem(_ => time.StrikeTimeouts());

    private void Answer(string text)
    {
        while (_late.TryDequeue(out var late))
            Say(late);
        Say(text);
    }

    private void Say(string text)
    {
        lock (_lock)
        {
            _idle = new(TaskCreationOptions.RunContinuationsAsynchronously);
            foreach (var piece in Encoding.Latin1.GetBytes(text).Chunk(PieceBytes > 0 ? PieceBytes : 4096))
                _toHost.Writer.TryWrite(piece);
        }
    }
}
