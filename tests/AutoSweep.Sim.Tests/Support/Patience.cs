namespace AutoSweep.Sim.Tests.Support;

/// <summary>How long a test waits for something that must come, before it fails instead of hanging.</summary>
internal static class Patience
{
    public static TimeSpan Limit { get; } = TimeSpan.FromSeconds(60);
}
