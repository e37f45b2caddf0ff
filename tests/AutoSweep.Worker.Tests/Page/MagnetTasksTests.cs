using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Levelling;
using AutoSweep.Worker.Page.Levels;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page;

public sealed class MagnetTasksTests : IDisposable
{
    private static readonly MagnetWorkOrder Order = new(
        [new(3, 2, 5, 1, 2), new(1, -2, 5, 1, 3)],
            [new(9, "4.0 dB lie further in than the known gap allows: a thicker feeler gauge leaf may say more")]);

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Before_the_work_everything_is_to_do()
    {
        using var job = Some.Job(_folder);

        var tasks = MagnetTasks.Of(Order, job.State);

        Assert.Equal([3, 1], tasks.ToDo.Select(work => work.Output));
        Assert.Equal("2 magnets to go to", tasks.Headline);
        Assert.EndsWith("may say more", Assert.Single(tasks.LeftOut).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_done_is_told_apart_and_comes_back_when_it_is_taken_back()
    {
        using var job = Some.Job(_folder);
        job.Append(new OutputLevelled { Output = 3, Ending = GuidanceEnding.InBand, Moves = 2, TargetMillivolts = 5 });

        var tasks = MagnetTasks.Of(Order, job.State);
        Assert.Equal([1], tasks.ToDo.Select(work => work.Output));
        Assert.Equal([(3, "in its band, 2 moves")], tasks.Done);
        Assert.Equal("1 more magnet to go to", tasks.Headline);

        Assert.Equal(3, LevellingUndo.TakeBack(job));
        Assert.Equal([3, 1], MagnetTasks.Of(Order, job.State).ToDo.Select(work => work.Output));
        Assert.Null(LevellingUndo.TakeBack(job));
    }

    [Fact]
    public void Where_all_is_done_or_nothing_needs_doing_the_headline_says_which()
    {
        using var job = Some.Job(_folder);
        Assert.Equal("No magnet needs to be touched", MagnetTasks.Of(new([], []), job.State).Headline);
        job.Append(new OutputLevelled { Output = 3, Ending = GuidanceEnding.NearContact, Moves = 1, TargetMillivolts = 5 });
        var tasks = MagnetTasks.Of(new([], []), job.State);

        Assert.Equal("No magnet is left to go to", tasks.Headline);
        Assert.Equal("outside its band, 1 move; no nearer, for contact", Assert.Single(tasks.Done).Words);
    }
}
