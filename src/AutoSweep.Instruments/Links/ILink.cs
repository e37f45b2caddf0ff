namespace AutoSweep.Instruments.Links;

/// <summary>A byte link to one instrument: a socket, a serial line, USBTMC, VISA.</summary>
/// <remarks>
/// Knows nothing of messages; <see cref="Scpi.ScpiSession"/> frames them. Not for use from two threads at once. A link that
/// breaks throws <see cref="IOException"/> from then on, and never reconnects by itself.
/// </remarks>
public interface ILink : IAsyncDisposable
{
    /// <summary>The resource that was opened.</summary>
    ResourceName Resource { get; }

    /// <summary>Sends all the bytes.</summary>
    /// <exception cref="IOException">The link is broken.</exception>
    ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken);

    /// <summary>Sends all the bytes of a message that is answered.</summary>
    /// <remarks>On a socket or a serial line answers come by themselves, and this is <see cref="WriteAsync"/>. On USBTMC, GPIB and the like
    /// an instrument speaks only when it is told to, and telling it when nothing was asked is an error (-420, SCPI-1999, 21.8.12): such
    /// a link fetches one answer after a message that was sent this way, and none after any other. A link that wraps another must pass
    /// this call on.</remarks>
    /// <param name="bytes">The message with its terminator.</param>
    /// <param name="answerWithin">How long anybody will wait for the answer.</param>
    /// <param name="cancellationToken">Ends the sending, not the fetching.</param>
    /// <exception cref="IOException">The link is broken.</exception>
    ValueTask WriteQueryAsync(ReadOnlyMemory<byte> bytes, TimeSpan answerWithin, CancellationToken cancellationToken) =>
        WriteAsync(bytes, cancellationToken);

    /// <summary>Waits for bytes and takes what has come, as it was split or merged on the way.</summary>
    /// <returns>How many bytes were taken, 1 or more.</returns>
    /// <exception cref="IOException">The link is broken or the other end has closed it.</exception>
    ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken);
}
