using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Levels;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page;

public sealed class LevelsViewTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Outputs_outside_tolerance_are_told_with_the_side_that_they_are_off_to()
    {
        var view = LevelsView.Of(State(_ => 0, output => output switch { 10 => 3, 20 => -3, _ => 0 }));

        Assert.Equal([CurveStand.AsFound, CurveStand.AsLeft], view.Stands.Select(stand => stand.Stand));
        Assert.Equal([(10, CurveVerdict.TooLoud), (20, CurveVerdict.TooSoft)],
            view.Rows.Where(row => row.IsOff).Select(row => (row.Output, row.Verdict!.Value)));
        Assert.StartsWith("too loud", view.Rows[9].Remark, StringComparison.Ordinal);
        Assert.Equal((91, 1, 1),
            (view.Stands[1].Count(CurveVerdict.Within), view.Stands[1].Count(CurveVerdict.TooLoud), view.Stands[1].Count(CurveVerdict.TooSoft)));
        Assert.Equal(93, view.Stands[0].Count(CurveVerdict.Within));
        Assert.False(view.IsChosen);
    }

    [Fact]
    public void Charts_hold_no_style_and_no_script_that_the_pages_policy_forbids()
    {
        var view = LevelsView.Of(State(output => output % 3));

        foreach (var chart in new[] { view.DeviationChart, view.LevelChart })
        {
            Assert.StartsWith("<svg", chart, StringComparison.Ordinal);
            Assert.DoesNotContain("style=", chart, StringComparison.Ordinal);
            Assert.DoesNotContain("<style", chart, StringComparison.Ordinal);
            Assert.DoesNotContain("<script", chart, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Before_the_survey_there_is_a_target_and_no_curve()
    {
        using var job = Some.Job(_folder);

        var view = LevelsView.Of(job.State);

        Assert.Empty(view.Stands);
        Assert.Null(view.LevelChart);
        Assert.All(view.Rows, row => Assert.False(row.IsNotable));
    }

    [Fact]
    public void A_reading_in_between_draws_nothing_anew_and_another_target_does()
    {
        var memory = new LevelsMemory();
        using var job = Some.Job(_folder);
        job.Append(Some.Surveyed(1));
        var first = memory.Of(job.State);

        job.Append(new OutputRecognised(JobStage.Sweep, 2, 100, RecognisedBy.Tone));
        Assert.Same(first, memory.Of(job.State));

        job.Append(new TargetChosen(new("other", "a test", [new(1, 5, 1)])));
        Assert.NotSame(first, memory.Of(job.State));
        Assert.Equal(("other", true), (memory.Of(job.State).Target.Name, memory.Of(job.State).IsChosen));
    }

    private JobState State(Func<int, double> asFound, Func<int, double>? asLeft = null)
    {
        MadeJob.Write(_folder.File("job"), asFound, asLeft);
        return JobReading.Read(_folder.File("job")).State;
    }
}
