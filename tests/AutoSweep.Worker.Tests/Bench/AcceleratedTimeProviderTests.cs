using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class AcceleratedTimeProviderTests
{
    private readonly AcceleratedTimeProvider _clock = new(rate: 2000);

    [Fact]
    public async Task A_wait_takes_its_share_of_wall_time_and_its_whole_length_by_its_own_clock()
    {
        var (wall, bench) = (TimeProvider.System.GetTimestamp(), _clock.GetTimestamp());

        await Task.Delay(TimeSpan.FromSeconds(200), _clock);

        Assert.InRange(TimeProvider.System.GetElapsedTime(wall).TotalSeconds, 0.09, 100);
        Assert.InRange(_clock.GetElapsedTime(bench).TotalSeconds, 190, 200_000);
    }

    [Fact]
    public async Task A_time_out_that_is_set_anew_is_shortened_too()
    {
        var fired = new TaskCompletionSource();
        await using var timer = _clock.CreateTimer(_ => fired.TrySetResult(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);

        timer.Change(TimeSpan.FromSeconds(200), Timeout.InfiniteTimeSpan);

        await fired.Task.WaitAsync(TimeSpan.FromSeconds(100), TimeProvider.System);
    }
}
