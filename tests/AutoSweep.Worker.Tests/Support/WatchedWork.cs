using AutoSweep.Worker.Page.Work;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>Waits for what a piece of the page's work comes to, within a limit.</summary>
internal static class WatchedWork
{
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    public static async Task UntilAsync(this DeskWork work, Func<bool> isSo)
    {
        var so = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        void Look()
        {
            if (isSo())
                so.TrySetResult();
        }

        work.Changed += Look;
        Look();
        await so.Task.WaitAsync(Longest);
        work.Changed -= Look;
    }

    public static Task EndAsync(this DeskWork work) => work.UntilAsync(() => work.Progress != WorkProgress.GoingOn);

    public static async Task AnswerAsync(this DeskWork work, string line)
    {
        await work.UntilAsync(() => work.Dialogue.Asked is not null);
        Assert.True(work.Dialogue.Answer(work.Dialogue.Asked!.Id, line));
    }
}
