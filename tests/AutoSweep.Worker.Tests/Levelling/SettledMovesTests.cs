using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Levelling;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Levelling;

public sealed class SettledMovesTests : IDisposable
{
    private static readonly LevellingOptions Options = new() { Span = TimeSpan.Zero };

    private readonly BenchScene _scene = new();
    private readonly Queue<double> _levels = new();
    private double _last;

    public SettledMovesTests() => _scene.Meter.Shown = () =>
    {
        _scene.Clock.Advance(TimeSpan.FromSeconds(0.5));
        _last = _levels.TryDequeue(out var next) ? next : _last;
        return _last / 1000 * 20;
    };

    [Fact]
    public async Task A_level_that_dips_comes_back_and_stands_still_is_a_move()
    {
        Levels((5, 6), (3, 6), (4, 60));

        var moved = Assert.IsType<MoveOutcome.Moved>(await WaitAsync(5));

        Assert.Equal(4, moved.Level.Mean.Millivolts, 6);
    }

    [Fact]
    public async Task A_rest_between_pulling_and_pushing_back_is_not_the_end_of_the_move()
    {
        Levels((5, 6), (3, 10), (4.2, 10), (4, 60));

        Assert.Equal(4, Assert.IsType<MoveOutcome.Moved>(await WaitAsync(5)).Level.Mean.Millivolts, 6);
    }

    [Fact]
    public async Task A_level_that_does_not_move_is_read_as_it_is_when_patience_is_over()
    {
        Levels((5, 1000));
        var began = _scene.Clock.GetUtcNow();

        Assert.Equal(5, Assert.IsType<MoveOutcome.Moved>(await WaitAsync(5)).Level.Mean.Millivolts, 6);
        Assert.True(_scene.Clock.GetUtcNow() - began > Options.Patience);
    }

    [Fact]
    public async Task A_clip_that_comes_off_is_no_move()
    {
        Levels((5, 6), (0.1, 60));

        Assert.IsType<MoveOutcome.ClipGone>(await WaitAsync(5));
    }

    public void Dispose() => _scene.Dispose();

    private void Levels(params (double Millivolts, int Times)[] levels)
    {
        foreach (var (millivolts, times) in levels)
            for (var i = 0; i < times; i++)
                _levels.Enqueue(millivolts);
    }

    private Task<MoveOutcome> WaitAsync(double millivolts) => new SettledMoves(_scene.Levels, Options, _scene.Clock)
        .WaitAsync(new LevelSample(new(millivolts / 1000), new(0), 0.001, 8, true), _ => { }, default);
}
