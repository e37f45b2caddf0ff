namespace AutoSweep.Instruments.Links.Usbtmc;

/// <summary>An open device file of the kernel's usbtmc driver: its system calls, as they are.</summary>
public interface IUsbtmcFile : IDisposable
{
    /// <summary>Sends one message; the driver marks its end (EOM).</summary>
    /// <returns>How many bytes went out, or the negated error number.</returns>
    int Write(ReadOnlySpan<byte> bytes);

    /// <summary>Asks the instrument for so many bytes at most, and waits for them.</summary>
    /// <returns>How many bytes came; 0 when both ends are out of step; or the negated error number.</returns>
    int Read(Span<byte> buffer);

    /// <summary>A request to the driver.</summary>
    /// <param name="request">One of <see cref="UsbtmcRequest"/>.</param>
    /// <param name="value">What goes with it, and what comes back.</param>
    /// <returns>0, or the negated error number.</returns>
    int Control(UsbtmcRequest request, ref uint value);
}
