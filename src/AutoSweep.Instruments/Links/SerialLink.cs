using System.IO.Ports;
using System.Threading.Channels;
using AutoSweep.Core;

namespace AutoSweep.Instruments.Links;

/// <summary>A serial line, or a pty that stands for one.</summary>
/// <remarks>
/// A thread of its own reads with a short time-out and hands the bytes on: the asynchronous reads of System.IO.Ports ignore
/// their time-out and often their token (dotnet/corefx 36040), and its events fire twice (33146). Writing and closing share one lock,
/// because closing during a write can hang on Linux (dotnet/runtime 100690); every write has a time-out. Once the reader has seen the line
/// break nothing is written any more: closing waits for every byte to leave, and bytes for an unplugged adapter never do.
/// </remarks>
public sealed class SerialLink : ILink
{
    // Time-outs under 50 ms are rounded on some systems (dotnet/corefx 33146); 100 ms bounds how long closing waits for the reader.
    private const int ReadTimeoutMilliseconds = 100;
    private const int WriteTimeoutMilliseconds = 2000;

    // A write may be under way, and the port gets as long again for what it holds.
    private static readonly TimeSpan LongestClosing = TimeSpan.FromMilliseconds(2 * WriteTimeoutMilliseconds);

    private readonly SerialPort _port;
    private readonly Lock _writeOrClose = new();
    private readonly Channel<byte[]> _received = Channel.CreateUnbounded<byte[]>(new() { SingleWriter = true });
    private readonly Thread _reader;
    private volatile bool _closing;
    private volatile Exception? _break;
    private ReadOnlyMemory<byte> _left;

    private SerialLink(ResourceName resource, SerialPort port)
    {
        (Resource, _port) = (resource, port);
        _reader = new(ReadUntilClosed) { IsBackground = true, Name = $"serial {port.PortName}" };
        _reader.Start();
    }

    /// <inheritdoc/>
    public ResourceName Resource { get; }

    /// <summary>Opens the port.</summary>
    /// <exception cref="BenchFaultException">No such port (lists those there are), in use, or not permitted.</exception>
    public static SerialLink Open(SerialResource resource, SerialSettings settings)
    {
        var port = SerialPorts.New(resource.Port, settings);
        (port.ReadTimeout, port.WriteTimeout) = (ReadTimeoutMilliseconds, WriteTimeoutMilliseconds);
        try
        {
            port.Open();
            SerialPorts.SayReady(port);
            return new(resource, port);
        }
        catch (Exception exception)
            when (exception is IOException or UnauthorizedAccessException or ArgumentException or InvalidOperationException)
        {
            port.Dispose();
            throw SerialPorts.NotReachable(resource, exception);
        }
    }

    /// <inheritdoc/>
    public ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        cancellationToken.ThrowIfCancellationRequested();
        var copy = bytes.ToArray();
        return new(Task.Run(() => Write(copy), CancellationToken.None));
    }

    /// <inheritdoc/>
    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        if (_left.IsEmpty)
            _left = await TakeAsync(cancellationToken);
        var count = Math.Min(buffer.Length, _left.Length);
        _left[..count].CopyTo(buffer);
        _left = _left[count..];
        return count;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        _closing = true;
        await Task.Run(_reader.Join);
        var closed = Task.Factory.StartNew(ClosePort, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            await closed.WaitAsync(LongestClosing, TimeProvider.System);
        }
        catch (TimeoutException)
        {
            // Unplugged with bytes on their way: the port waits for them for ever. It is left to the end of the program, on a thread of
            // its own; the device is gone and nobody misses the handle.
        }
    }

    private void ClosePort()
    {
        lock (_writeOrClose)
            _port.Dispose();
    }

    private async Task<ReadOnlyMemory<byte>> TakeAsync(CancellationToken cancellationToken)
    {
        try
        {
            return await _received.Reader.ReadAsync(cancellationToken);
        }
        catch (ChannelClosedException exception)
        {
            throw Broken(exception.InnerException);
        }
    }

    private void Write(byte[] bytes)
    {
        lock (_writeOrClose)
        {
            if (_break is { } cause)
                throw Broken(cause);
            try
            {
                _port.BaseStream.Write(bytes);
            }
            catch (Exception exception) when (exception is TimeoutException or InvalidOperationException or UnauthorizedAccessException)
            {
                throw new IOException($"{Resource}: the serial line takes no bytes. {exception.Message}", exception);
            }
        }
    }

    private void ReadUntilClosed()
    {
        var buffer = new byte[4096];
        Exception? cause = null;
        try
        {
            while (!_closing)
            {
                if (ReadSome(buffer) is { Length: > 0 } bytes)
                    _received.Writer.TryWrite(bytes);
            }
        }
        catch (Exception exception)
            when (exception is IOException or InvalidOperationException or UnauthorizedAccessException or OperationCanceledException)
        {
            _break = cause = exception;
        }

        _received.Writer.Complete(cause);
    }

    private byte[] ReadSome(byte[] buffer)
    {
        try
        {
            return buffer[.._port.BaseStream.Read(buffer)];
        }
        catch (TimeoutException)
        {
            // An unplugged adapter goes on timing out (dotnet/runtime 121627): its device node is gone.
            return SerialPorts.IsGone(_port.PortName) ? throw new IOException($"{_port.PortName} was unplugged.") : [];
        }
    }

    private IOException Broken(Exception? cause) => new($"{Resource}: the serial line broke. {cause?.Message}", cause);
}
