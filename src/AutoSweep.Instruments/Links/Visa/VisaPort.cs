namespace AutoSweep.Instruments.Links.Visa;

/// <summary>A session of a VISA library with one instrument.</summary>
internal sealed class VisaPort : IMessagePort
{
    private readonly VisaFunctions _visa;
    private readonly uint _manager;
    private readonly uint _session;
    private readonly Lock _interruptOrClose = new();
    private TimeSpan _timeout;
    private bool _closed;

    /// <summary>A port over an open session; closes it and the resource manager with it.</summary>
    /// <param name="visa">The library.</param>
    /// <param name="manager">The resource manager under which the session was opened.</param>
    /// <param name="session">The session.</param>
    /// <param name="isStream">Whether it is a socket or a serial line: those have no serial poll.</param>
    public VisaPort(VisaFunctions visa, uint manager, uint session, bool isStream) =>
        (_visa, _manager, _session, IsStream) = (visa, manager, session, isStream);

    /// <inheritdoc/>
    public bool IsStream { get; }

    /// <inheritdoc/>
    public void Write(ReadOnlySpan<byte> message, TimeSpan timeout)
    {
        SetTimeout(timeout);
        while (message.Length > 0)
        {
            Checked(_visa.Write(_session, message, out var count));
            message = message[(int)count..];
        }
    }

    /// <inheritdoc/>
    public int Read(Span<byte> buffer, TimeSpan timeout, out bool ended)
    {
        SetTimeout(timeout);
        var status = _visa.Read(_session, buffer, out var count);
        // What had come before a time-out is part of the answer.
        var isPart = count > 0 && status is VisaStatus.BufferFull or VisaStatus.TimedOut or VisaStatus.Aborted;
        ended = !isPart;
        if (!isPart)
            Checked(status);
        return (int)count;
    }

    /// <inheritdoc/>
    public byte? ReadStatusByte()
    {
        if (IsStream)
            return null;
        var status = _visa.ReadStatusByte(_session, out var value);
        return Tolerated(status) < 0 ? null : (byte)value;
    }

    /// <inheritdoc/>
    public void Clear() => Tolerated(_visa.Clear(_session));

    /// <inheritdoc/>
    public void Interrupt()
    {
        lock (_interruptOrClose)
        {
            if (!_closed)
                _visa.Terminate(_session);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_interruptOrClose)
        {
            if (_closed)
                return;
            _closed = true;
        }

        _visa.Close(_session);
        _visa.Close(_manager);
    }

    private void SetTimeout(TimeSpan timeout)
    {
        if (timeout == _timeout)
            return;
        _timeout = timeout;
        Tolerated(_visa.SetAttribute(_session, VisaAttribute.Timeout, (nuint)Math.Ceiling(timeout.TotalMilliseconds)));
    }

    // Not every resource knows every call; only a lost one ends the link.
    private int Tolerated(int code)
    {
        if (code < 0 && VisaStatus.IsLost(code))
            Checked(code);
        return code;
    }

    private int Checked(int code) => code switch
    {
        >= 0 => code,
        VisaStatus.TimedOut or VisaStatus.Aborted => throw new TimeoutException(VisaStatus.Of(code).ToString()),
        _ => throw new IOException($"{VisaStatus.Of(code, _visa.DescribeStatus(_session, code))}."),
    };
}
