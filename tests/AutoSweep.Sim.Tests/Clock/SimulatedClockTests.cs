using AutoSweep.Sim.Clock;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Sim.Tests.Clock;

/// <summary>Time on the bench.</summary>
public class SimulatedClockTests
{
    private readonly FakeTimeProvider real = new();

    [Fact]
    public void It_starts_at_zero_and_runs_at_its_rate()
    {
        var clock = new SimulatedClock(60, real);
        Assert.Equal(TimeSpan.Zero, clock.Now);
        real.Advance(TimeSpan.FromSeconds(2));
        Assert.Equal(TimeSpan.FromSeconds(120), clock.Now);
        Assert.Equal(TimeSpan.FromSeconds(120), clock.GetElapsedTime(0));
    }

    [Fact]
    public async Task A_wait_too_short_for_a_timer_ends_at_once_at_its_exact_time()
    {
        var clock = new SimulatedClock(60, real);
        await clock.WaitUntilAsync(TimeSpan.FromMilliseconds(20), CancellationToken.None);
        Assert.Equal(TimeSpan.FromMilliseconds(20), clock.Now);
    }

    [Fact]
    public async Task After_a_skipped_wait_the_clock_runs_on_from_there()
    {
        var clock = new SimulatedClock(60, real);
        await clock.WaitUntilAsync(TimeSpan.FromMilliseconds(50), CancellationToken.None);
        real.Advance(TimeSpan.FromMilliseconds(2));
        Assert.Equal(170, clock.Now.TotalMilliseconds, 1e-3);
    }

    [Fact]
    public async Task A_wait_that_a_timer_can_hold_takes_real_time()
    {
        var clock = new SimulatedClock(60, real);
        var waiting = clock.WaitUntilAsync(TimeSpan.FromMilliseconds(100), CancellationToken.None);
        Assert.False(waiting.IsCompleted);
        real.Advance(TimeSpan.FromMilliseconds(2));
        await waiting;
        Assert.Equal(120, clock.Now.TotalMilliseconds, 1e-3);
    }

    [Fact]
    public async Task Timers_of_the_clock_run_in_simulated_time()
    {
        var clock = new SimulatedClock(60, real);
        var minute = Task.Delay(TimeSpan.FromMinutes(1), clock);
        real.Advance(TimeSpan.FromMilliseconds(990));
        Assert.False(minute.IsCompleted);
        real.Advance(TimeSpan.FromMilliseconds(20));
        await minute;
    }

    [Fact]
    public async Task A_wait_can_be_ended()
    {
        var clock = new SimulatedClock(1, real);
        using var end = new CancellationTokenSource();
        var waiting = clock.WaitUntilAsync(TimeSpan.FromSeconds(10), end.Token).AsTask();
        await end.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
    }
}
