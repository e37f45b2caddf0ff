namespace AutoSweep.Instruments.Links;

/// <summary>A byte link to one instrument: a socket, a serial line, later USBTMC or VISA.</summary>
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

    /// <summary>Waits for bytes and takes what has come, as it was split or merged on the way.</summary>
    /// <returns>How many bytes were taken, 1 or more.</returns>
    /// <exception cref="IOException">The link is broken or the other end has closed it.</exception>
    ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken);
}
