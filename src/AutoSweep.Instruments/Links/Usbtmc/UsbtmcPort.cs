namespace AutoSweep.Instruments.Links.Usbtmc;

/// <summary>A USBTMC instrument through the kernel's driver.</summary>
/// <remarks>After a time-out the transfer stays open in the driver (its auto-abort is off), and the next query would read the stale answer:
/// so <see cref="Clear"/> aborts it first, then clears the instrument (kernel, drivers/usb/class/usbtmc.c).</remarks>
public sealed class UsbtmcPort : IMessagePort
{
    // USBTMC_IOCTL_SET_TIMEOUT refuses less.
    private const double ShortestTimeoutMilliseconds = 100;

    // USB488, table 8 as tmc.h has it: remote control, go to local; and IEEE 488.2, without which a status byte cannot be relied on.
    private const uint RemoteControl = 2;
    private const uint Ieee488Point2 = 4;

    private readonly IUsbtmcFile _file;
    private readonly byte _terminator;
    private readonly uint _capabilities;
    private bool _tellsEnds = true;
    private uint _timeout;

    /// <summary>A port over an open device file, which it owns from now on. Puts the instrument under remote control if it can.</summary>
    /// <param name="file">The file.</param>
    /// <param name="replyTerminator">What ends an answer where the driver is too old to tell.</param>
    public UsbtmcPort(IUsbtmcFile file, char replyTerminator)
    {
        (_file, _terminator) = (file, (byte)replyTerminator);
        if (file.Control(UsbtmcRequest.Get488Capabilities, ref _capabilities) < 0)
            _capabilities = 0;
        var on = 1u;
        if ((_capabilities & RemoteControl) != 0)
            file.Control(UsbtmcRequest.RemoteEnable, ref on);
    }

    /// <inheritdoc/>
    public bool IsStream => false;

    /// <inheritdoc/>
    public void Write(ReadOnlySpan<byte> message, TimeSpan timeout)
    {
        SetTimeout(timeout);
        var count = Checked(_file.Write(message));
        if (count < message.Length)
            throw new IOException(FormattableString.Invariant($"the instrument took {count} of {message.Length} bytes."));
    }

    /// <inheritdoc/>
    public int Read(Span<byte> buffer, TimeSpan timeout, out bool ended)
    {
        SetTimeout(timeout);
        var count = Checked(_file.Read(buffer));
        if (count == 0)
            throw new TimeoutException("the instrument's answer is not the one that was asked for.");
        ended = HasEnded(buffer[count - 1]);
        return count;
    }

    /// <inheritdoc/>
    public byte? ReadStatusByte()
    {
        if ((_capabilities & Ieee488Point2) == 0)
            return null;
        var status = 0u;
        return Tolerated(_file.Control(UsbtmcRequest.ReadStatusByte, ref status)) < 0 ? null : (byte)status;
    }

    /// <inheritdoc/>
    public void Clear()
    {
        var nothing = 0u;
        Tolerated(_file.Control(UsbtmcRequest.AbortBulkIn, ref nothing));
        Tolerated(_file.Control(UsbtmcRequest.Clear, ref nothing));
    }

    /// <summary>Does nothing: the driver holds its lock for as long as a read lasts. An instrument with a status byte is read only when
    /// it has something to say.</summary>
    public void Interrupt()
    {
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        var nothing = 0u;
        if ((_capabilities & RemoteControl) != 0)
            _file.Control(UsbtmcRequest.GoToLocal, ref nothing);
        _file.Dispose();
    }

    private void SetTimeout(TimeSpan timeout)
    {
        var milliseconds = (uint)Math.Max(timeout.TotalMilliseconds, ShortestTimeoutMilliseconds);
        if (milliseconds == _timeout)
            return;
        _timeout = milliseconds;
        Tolerated(_file.Control(UsbtmcRequest.SetTimeout, ref milliseconds));
    }

    // The end mark, and on kernels before 4.20 the terminator.
    private bool HasEnded(byte last)
    {
        var attributes = 0u;
        _tellsEnds = _tellsEnds && Tolerated(_file.Control(UsbtmcRequest.MessageInAttributes, ref attributes)) >= 0;
        return _tellsEnds ? (attributes & 1) != 0 : last == _terminator;
    }

    private static int Tolerated(int result) => result == -LinuxError.NoDevice ? Checked(result) : result;

    private static int Checked(int result) => result switch
    {
        >= 0 => result,
        -LinuxError.TimedOut => throw new TimeoutException("the instrument did not answer in time."),
        _ => throw new IOException($"{LinuxError.Words(-result)}."),
    };
}
