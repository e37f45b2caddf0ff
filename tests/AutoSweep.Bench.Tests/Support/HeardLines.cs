namespace AutoSweep.Bench.Tests.Support;

/// <summary>Lines as they come from another program; whoever waits for one misses none that came before.</summary>
internal sealed class HeardLines
{
    private readonly Lock _gate = new();
    private readonly List<string> _lines = [];
    private TaskCompletionSource _more = NewMore();

    public void Add(string line)
    {
        TaskCompletionSource more;
        lock (_gate)
        {
            _lines.Add(line);
            (more, _more) = (_more, NewMore());
        }

        more.SetResult();
    }

    /// <summary>All that have come, and what is done when another comes.</summary>
    public (IReadOnlyList<string> Lines, Task More) Look()
    {
        lock (_gate)
            return ([.. _lines], _more.Task);
    }

    private static TaskCompletionSource NewMore() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
