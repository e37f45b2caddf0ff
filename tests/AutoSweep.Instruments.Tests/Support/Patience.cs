namespace AutoSweep.Instruments.Tests.Support;

/// <summary>How long a test waits for something that must come, before it fails instead of hanging.</summary>
public static class Patience
{
    public static TimeSpan Limit { get; } = TimeSpan.FromSeconds(60);

    /// <summary>For what has no way of telling when something has happened.</summary>
    public static async Task UntilAsync(Func<bool> hasHappened)
    {
        using var patience = new CancellationTokenSource(Limit, TimeProvider.System);
        while (!hasHappened())
            await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System, patience.Token);
    }
}
