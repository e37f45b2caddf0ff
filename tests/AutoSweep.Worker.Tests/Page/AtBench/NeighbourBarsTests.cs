using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.AtBench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.AtBench;

public sealed class NeighbourBarsTests : IDisposable
{
    private readonly JobRecord _job = JobRecord.Rehearse(Some.Profile, "AutoSweep test", TimeProvider.System);

    public NeighbourBarsTests() => _job.Append(new StageStarted(JobStage.Survey, [.. Some.Profile.Outputs.Select(output => output.Number)]));

    public void Dispose() => _job.Dispose();

    [Fact]
    public void Nothing_is_shown_before_an_output_is_clipped() => Assert.Empty(NeighbourBars.Of(_job.State, JobStage.Survey, null, null));

    [Fact]
    public void Only_outputs_of_the_same_group_are_neighbours()
    {
        foreach (var output in Some.Profile.Outputs)
            _job.Append(Some.Surveyed(output.Number));

        var group = Some.Profile.Outputs.Single(output => output.Number == 9).Group;
        Assert.All(NeighbourBars.Of(_job.State, JobStage.Survey, 9, null), bar =>
            Assert.Equal(group, Some.Profile.Outputs.Single(output => output.Number == bar.Output).Group));
    }

    [Fact]
    public void The_level_that_is_being_read_stands_beside_those_that_are_known()
    {
        _job.Append(Some.Surveyed(2) with { Millivolts = 4 });
        _job.Append(Some.Surveyed(3) with { Millivolts = 2, Flags = [SurveyFinding.Unsteady] });

        var bars = NeighbourBars.Of(_job.State, JobStage.Survey, 1, 8).ToDictionary(bar => bar.Output);

        Assert.Equal((8.0, 1.0, true), (bars[1].Millivolts!.Value, bars[1].Share, bars[1].IsHere));
        Assert.Equal((0.5, false, false), (bars[2].Share, bars[2].IsHere, bars[2].IsOdd));
        Assert.True(bars[3].IsOdd);
        Assert.Null(bars[4].Millivolts);
    }

    [Fact]
    public void Between_outputs_the_one_done_last_keeps_its_neighbours()
    {
        _job.Append(Some.Surveyed(2));

        var bars = NeighbourBars.Of(_job.State, JobStage.Survey, null, null);

        Assert.Equal(2, bars.Single(bar => bar.Millivolts is not null).Output);
        Assert.DoesNotContain(bars, bar => bar.IsHere);
    }

    [Fact]
    public void A_sweep_shows_the_levels_at_the_peaks()
    {
        _job.Append(Some.Swept(9));

        Assert.Equal(5.372, NeighbourBars.Of(_job.State, JobStage.Sweep, 10, null).Single(bar => bar.Output == 9).Millivolts);
    }
}
