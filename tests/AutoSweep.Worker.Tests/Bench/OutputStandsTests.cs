using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.AtBench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Bench;

public sealed class OutputStandsTests : IDisposable
{
    private readonly JobRecord _job = JobRecord.Rehearse(Some.Profile, "AutoSweep test", TimeProvider.System);

    public OutputStandsTests()
    {
        _job.Append(new StageStarted(JobStage.Sweep, [9, 10, 11, 12]));
        _job.Append(Some.Swept(9));
        _job.Append(Some.Swept(10) with { Reason = PeakStopReason.BudgetSpent });
    }

    public static TheoryData<int, BenchActivity, OutputStand> Stands => new()
    {
        { 1, BenchActivity.Reading, OutputStand.NotInStage },
        { 9, BenchActivity.Reading, OutputStand.Done },
        { 10, BenchActivity.Reading, OutputStand.Look },
        { 11, BenchActivity.Reading, OutputStand.AtClips },
        { 11, BenchActivity.Moving, OutputStand.AtClips },
        { 11, BenchActivity.NeedsYou, OutputStand.Open },
        { 12, BenchActivity.Reading, OutputStand.Open },
    };

    public void Dispose() => _job.Dispose();

    [Theory]
    [MemberData(nameof(Stands))]
    public void An_output_stands_as_the_journal_and_the_clips_say(int output, BenchActivity activity, OutputStand stand) =>
        Assert.Equal(stand, OutputStands.Of(_job.State, new() { Activity = activity, Output = 11 }, JobStage.Sweep, output));

    [Fact]
    public void No_two_states_on_the_map_share_a_sign()
    {
        var signs = Enum.GetValues<OutputStand>().Select(MapCell.SignOf).ToList();

        Assert.Equal(signs.Count, signs.Distinct().Count());
    }

    [Fact]
    public void The_map_has_every_output_and_marks_the_next_one()
    {
        var cells = MapCells.Of(_job.State, new() { Activity = BenchActivity.Waiting, Next = 12 }, JobStage.Sweep);

        Assert.Equal(Some.Profile.Outputs.Select(output => output.Number), cells.Select(cell => cell.Output));
        Assert.Equal(12, Assert.Single(cells, cell => cell.IsNext).Output);
    }
}
