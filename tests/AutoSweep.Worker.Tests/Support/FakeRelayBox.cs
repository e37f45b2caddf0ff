using AutoSweep.Instruments.Fixture;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A box that remembers what it was told to close.</summary>
internal sealed class FakeRelayBox : IRelayBox
{
    public string Serial => "F-0007";

    public int RelayCount => 3;

    public List<uint> Closed { get; } = [];

    /// <summary>Whether the relays have fallen open by themselves, each time that this is asked; they have not when nothing is left.</summary>
    public Queue<bool> Falls { get; } = new();

    /// <summary>What closing relays meets, after so many times that it did not.</summary>
    public Exception? Fails { get; set; }

    public int FailsAfter { get; set; }

    public Task CloseExactlyAsync(RelaySet relays, CancellationToken cancellationToken)
    {
        if (Fails is { } fault && Closed.Count == FailsAfter)
            throw fault;
        Closed.Add(relays.Mask);
        return Task.CompletedTask;
    }

    public Task<bool> StandsAsync(CancellationToken cancellationToken) => Task.FromResult(!Falls.TryDequeue(out var hasFallen) || !hasFallen);

    public Task<double?> ReadTemperatureAsync(CancellationToken cancellationToken) => Task.FromResult<double?>(22);

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
