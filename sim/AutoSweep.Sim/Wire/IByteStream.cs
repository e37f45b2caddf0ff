namespace AutoSweep.Sim.Wire;

/// <summary>The instrument's end of a wire.</summary>
internal interface IByteStream
{
    /// <returns>How many bytes came; 0 when the other end has gone.</returns>
    ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken);

    ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken);
}
