using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>Keys pressed beforehand; after the last one the input has ended.</summary>
internal sealed class FakeKeys(params OperatorKey[] keys) : IOperatorKeys
{
    private readonly Queue<OperatorKey> _keys = new(keys);

    public Task<OperatorKey> ReadAsync(CancellationToken cancellationToken) => Task.FromResult(_keys.TryDequeue(out var key) ? key : OperatorKey.Stop);
}
