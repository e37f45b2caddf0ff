using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Levelling;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Levelling;

public sealed class KeyedMovesTests : IDisposable
{
    private readonly BenchScene _scene = new();

    [Theory]
    [InlineData(OperatorKey.Go, typeof(MoveOutcome.Moved))]
    [InlineData(OperatorKey.Skip, typeof(MoveOutcome.Skipped))]
    [InlineData(OperatorKey.Undo, typeof(MoveOutcome.Undone))]
    public async Task Each_key_has_its_outcome(OperatorKey key, Type outcome)
    {
        _scene.Meter.Shown = () => 0.1;

        Assert.IsType(outcome, await WaitAsync(key));
    }

    [Fact]
    public Task The_stop_key_stops_the_stage() => Assert.ThrowsAsync<OperationCanceledException>(() => WaitAsync(OperatorKey.Stop));

    public void Dispose() => _scene.Dispose();

    private Task<MoveOutcome> WaitAsync(OperatorKey key) => new KeyedMoves(new FakeKeys(key), _scene.Levels, new() { Span = TimeSpan.Zero })
        .WaitAsync(new(new(0.005), new(0), 0.001, 8, true), _ => { }, default);
}
