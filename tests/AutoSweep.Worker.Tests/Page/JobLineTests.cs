using AutoSweep.Core.Journal;
using AutoSweep.Worker.History;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Jobs;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page;

public sealed class JobLineTests : IDisposable
{
    private static readonly int[] All = [.. Some.Profile.Outputs.Select(output => output.Number)];
    private static readonly int[] Filtered = [.. Some.Profile.FilteredOutputs.Select(output => output.Number)];

    private readonly TemporaryFolder _jobs = new();

    public void Dispose() => _jobs.Dispose();

    [Fact]
    public void A_job_that_has_only_begun_has_everything_left()
    {
        var line = Line(_ => { });

        Assert.Equal("begun, nothing read yet", line.Reached);
        Assert.Equal(["Survey as found", "Sweep for the peaking capacitance", $"New capacitors: {Filtered.Length} outputs"], line.Left);
        Assert.False(line.Summary.IsFinished);
    }

    [Fact]
    public void A_broken_off_sweep_says_how_far_it_got_and_what_is_missing()
    {
        var line = Line(job =>
        {
            Survey(job, JobStage.Survey);
            job.Append(new StageStarted(JobStage.Sweep, Filtered));
            foreach (var output in Filtered.SkipLast(1))
                job.Append(Some.Swept(output));
        });

        Assert.Equal($"swept {Filtered.Length - 1} of {Filtered.Length}", line.Reached);
        Assert.Equal("Sweep for the peaking capacitance: 1 output", line.Left[0]);
    }

    [Fact]
    public void A_job_with_new_capacitors_that_are_not_checked_yet_is_fitted()
    {
        var line = Line(job =>
        {
            Survey(job, JobStage.Survey);
            job.Append(new StageStarted(JobStage.Sweep, Filtered));
            foreach (var output in Filtered)
                job.Append(Some.Swept(output));
            job.Append(new OutputFitted { Output = Filtered[0], Parts = ["P1"], MeasuredPicofarads = 1, StandardUncertaintyPicofarads = 1,
                WantedPicofarads = 1, LossDecibels = 0, Meter = "m", LedgerSequence = 1 });
        });

        Assert.Equal($"fitted 1 of {Filtered.Length}", line.Reached);
        Assert.Equal([$"New capacitors: {Filtered.Length - 1} outputs", "Check of the new capacitors", "Survey as left"], line.Left);
    }

    [Fact]
    public void A_finished_job_has_nothing_left()
    {
        var line = Line(job =>
        {
            Survey(job, JobStage.Survey);
            Survey(job, JobStage.AsLeft);
        });

        Assert.Equal("finished", line.Reached);
        Assert.Empty(line.Left);
    }

    [Fact]
    public void Jobs_are_listed_the_newest_first_and_only_those_directly_in_the_folder_can_be_gone_on_with()
    {
        MadeJob.Write(_jobs.File("old"), _ => 0, opened: new(2025, 1, 1, 9, 0, 0, TimeSpan.Zero));
        Directory.CreateDirectory(_jobs.File("2026"));
        MadeJob.Write(_jobs.File("2026/new"), _ => 0, opened: new(2026, 1, 1, 9, 0, 0, TimeSpan.Zero));

        var lines = JobLine.Of(JobShelf.Read(_jobs.Path));

        Assert.Equal([("2026/new", false), ("old", true)], lines.Select(line => (line.Place, line.CanOpen)));
    }

    private JobLine Line(Action<JobRecord> work)
    {
        using (var job = JobRecord.Begin(JobFolder.Open(_jobs.File("one")), Some.Profile, "AutoSweep test", TimeProvider.System))
            work(job);
        return Assert.Single(JobLine.Of(JobShelf.Read(_jobs.Path)));
    }

    private static void Survey(JobRecord job, JobStage stage)
    {
        job.Append(new StageStarted(stage, All));
        foreach (var output in All)
            job.Append(Some.Surveyed(output) with { Stage = stage });
        job.Append(new StageEnded(stage));
    }
}
