namespace AutoSweep.Instruments.Links;

/// <summary>The blocking calls of an interface that carries messages with a marked end: USBTMC, GPIB, VXI-11, HiSLIP.</summary>
/// <remarks>Called from one thread only, except <see cref="Interrupt"/>. The link over it is <see cref="MessageLink"/>.</remarks>
public interface IMessagePort : IDisposable
{
    /// <summary>Whether it is a socket or a serial line after all: bytes come by themselves, and nothing marks the end of a
    /// message.</summary>
    bool IsStream { get; }

    /// <summary>Sends one whole message; its last byte carries the end mark.</summary>
    /// <exception cref="TimeoutException">The instrument takes no bytes.</exception>
    /// <exception cref="IOException">The link is broken.</exception>
    void Write(ReadOnlySpan<byte> message, TimeSpan timeout);

    /// <summary>Tells the instrument to speak and takes what it says.</summary>
    /// <param name="buffer">Takes the bytes.</param>
    /// <param name="timeout">How long it may take.</param>
    /// <param name="ended">Whether the last byte is the last one of the message; else there is more to be read.</param>
    /// <returns>How many bytes were taken.</returns>
    /// <exception cref="TimeoutException">Nothing came in time, the call was interrupted, or both ends are out of step.</exception>
    /// <exception cref="IOException">The link is broken.</exception>
    int Read(Span<byte> buffer, TimeSpan timeout, out bool ended);

    /// <summary>Reads the status byte without disturbing the instrument (IEEE 488.1 serial poll).</summary>
    /// <returns>Null where the interface or the instrument has no such thing.</returns>
    /// <exception cref="IOException">The link is broken.</exception>
    byte? ReadStatusByte();

    /// <summary>Device clear: empties the instrument's queues and leaves its settings (IEEE 488.2, 5.8).</summary>
    /// <remarks>An instrument that refuses is left as it is: the next exchange tells.</remarks>
    /// <exception cref="IOException">The link is broken.</exception>
    void Clear();

    /// <summary>Ends a read that blocks another thread, where the interface can.</summary>
    void Interrupt();
}
