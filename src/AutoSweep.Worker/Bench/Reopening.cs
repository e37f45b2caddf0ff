using AutoSweep.Core;
using Polly;
using Polly.Retry;

namespace AutoSweep.Worker.Bench;

/// <summary>How a lost instrument is tried again: for as long as it takes.</summary>
internal static class Reopening
{
    // About once a second is soon enough for a hand that has just pushed a plug in (bench practice, no source).
    private static readonly TimeSpan FirstWait = TimeSpan.FromSeconds(0.25);
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(1);

    /// <summary>Tries until one gives true.</summary>
    /// <param name="clock">The clock behind the waits between.</param>
    public static ResiliencePipeline<bool> Tries(TimeProvider clock) => new ResiliencePipelineBuilder<bool> { TimeProvider = clock }
        .AddRetry(new RetryStrategyOptions<bool>
        {
            ShouldHandle = new PredicateBuilder<bool>().HandleResult(false),
            MaxRetryAttempts = int.MaxValue,
            BackoffType = DelayBackoffType.Exponential,
            Delay = FirstWait,
            MaxDelay = LongestWait,
        })
        .Build();

    /// <summary>Whether a fault at opening again means only that the instrument is not back yet.</summary>
    public static bool IsStillMissing(BenchFaultException fault) =>
        fault.Kind is BenchFault.NotReachable or BenchFault.NoAnswer or BenchFault.WrongIdentity or BenchFault.WrongCalibration;
}
