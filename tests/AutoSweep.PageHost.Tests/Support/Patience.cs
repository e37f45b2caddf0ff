namespace AutoSweep.PageHost.Tests.Support;

/// <summary>Longer than anything here takes: a test that hangs fails instead.</summary>
internal static class Patience
{
    public static readonly TimeSpan Longest = TimeSpan.FromSeconds(120);

    public static Task<T> WithinAsync<T>(Task<T> task) => task.WaitAsync(Longest, TimeProvider.System);

    public static Task WithinAsync(Task task) => task.WaitAsync(Longest, TimeProvider.System);
}
