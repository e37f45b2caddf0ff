using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.AtBench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.AtBench;

public sealed class JobStepsTests : IDisposable
{
    private static readonly int[] Filtered = [9, 10, 11, 12, 13, 14];

    private readonly JobRecord _job = JobRecord.Rehearse(Some.Profile, "AutoSweep test", TimeProvider.System);

    private static int[] All => [.. Some.Profile.Outputs.Select(output => output.Number)];

    public void Dispose() => _job.Dispose();

    [Fact]
    public void A_new_job_begins_with_the_survey_and_may_begin_with_the_sweep()
    {
        Assert.Equal((JobStepKind.Survey, StepStand.Open), (Next.Kind, Next.Stand));
        Assert.Equal(StepStand.Open, Step(JobStepKind.Sweep).Stand);
        Assert.All([JobStepKind.Match, JobStepKind.Fit, JobStepKind.Check, JobStepKind.AsLeft, JobStepKind.Record], kind => Assert.Equal(StepStand.NotYet, Step(kind).Stand));
    }

    [Fact]
    public void A_stage_that_was_broken_off_is_offered_to_go_on_with()
    {
        _job.Append(new StageStarted(JobStage.Survey, All));
        _job.Append(Some.Surveyed(1));

        Assert.Equal((JobStepKind.Survey, StepStand.BrokenOff, 1, All.Length), (Next.Kind, Next.Stand, Next.Done, Next.Planned));
        Assert.Equal("Go on with the survey", StepWords.Button(Next));
        Assert.Equal($"1 of {All.Length}", StepWords.Stand(Next));
    }

    [Fact]
    public void Of_two_that_were_broken_off_the_later_one_is_offered()
    {
        _job.Append(new StageStarted(JobStage.Survey, All));
        _job.Append(new StageStarted(JobStage.Sweep, Filtered));

        Assert.Equal(JobStepKind.Sweep, Next.Kind);
        Assert.Equal(StepStand.BrokenOff, Step(JobStepKind.Survey).Stand);
    }

    [Fact]
    public void After_each_step_comes_the_next_one_to_the_record()
    {
        List<JobStepKind> offered = [];
        foreach (var write in new Action[] { Survey, Sweep, Match, Fit, Check, Level, AsLeft })
        {
            offered.Add(Next.Kind);
            write();
        }

        Assert.Equal([JobStepKind.Survey, JobStepKind.Sweep, JobStepKind.Match, JobStepKind.Fit, JobStepKind.Check, JobStepKind.Levels, JobStepKind.AsLeft], offered);
        Assert.Equal(JobStepKind.Record, Next.Kind);
    }

    [Fact]
    public void Parts_fitted_after_the_check_are_to_be_checked()
    {
        foreach (var write in new Action[] { Survey, Sweep, Match, Fit, Check })
            write();
        Fit(10);

        Assert.Equal((StepStand.BrokenOff, 5, 6), (Step(JobStepKind.Check).Stand, Step(JobStepKind.Check).Done, Step(JobStepKind.Check).Planned));
    }

    [Fact]
    public void A_result_taken_back_opens_its_stage_again()
    {
        Survey();
        _job.Append(new EntryWithdrawn(_job.State.LastResult(JobStage.Survey)!.Value.Sequence));

        Assert.Equal((JobStepKind.Survey, StepStand.BrokenOff), (Next.Kind, Next.Stand));
    }

    [Fact]
    public void A_generator_without_filters_has_no_steps_about_capacitors()
    {
        var plain = Some.Profile with { Outputs = [.. Some.Profile.Outputs.Where(output => output.Capacitor is null)] };
        using var job = JobRecord.Rehearse(plain, "AutoSweep test", TimeProvider.System);

        Assert.Equal([JobStepKind.Survey, JobStepKind.Levels, JobStepKind.AsLeft, JobStepKind.Record], JobSteps.Of(job.State).Select(step => step.Kind));
    }

    [Fact]
    public void The_old_set_can_be_measured_after_the_sweep_and_is_never_what_the_page_asks_for()
    {
        Survey();
        Assert.Equal(StepStand.NotYet, Step(JobStepKind.OldSet).Stand);
        Sweep();

        Assert.Equal((StepStand.Open, 0, 6), Old(0));
        Assert.Equal((StepStand.BrokenOff, 2, 6), Old(2));
        Assert.Equal((StepStand.Done, 6, 6), Old(6));
        Assert.All([0, 2, 6], olds => Assert.Equal(JobStepKind.Match, JobSteps.Next(JobSteps.Of(_job.State, olds)).Kind));
    }

    private (StepStand Stand, int Done, int Planned) Old(int olds) =>
        JobSteps.Of(_job.State, olds).Where(step => step.Kind == JobStepKind.OldSet).Select(step => (step.Stand, step.Done, step.Planned)).Single();

    private JobStep Next => JobSteps.Next(JobSteps.Of(_job.State));

    private JobStep Step(JobStepKind kind) => JobSteps.Of(_job.State).Single(step => step.Kind == kind);

    private void Survey() => Through(JobStage.Survey, All, output => Some.Surveyed(output));

    private void Sweep() => Through(JobStage.Sweep, Filtered, Some.Swept);

    private void Check() => Through(JobStage.Check, Filtered, output => new OutputChecked
    {
        Output = output, Millivolts = 5.3, PredictedMillivolts = 5.3, StandardUncertaintyDecibels = 0.1, IsExplained = true,
    });

    private void Level() => Through(JobStage.Level, [], _ => throw new InvalidOperationException());

    private void AsLeft() => Through(JobStage.AsLeft, All, output => Some.Surveyed(output) with { Stage = JobStage.AsLeft });

    private void Match() => _job.Append(new PartsMatched
    {
        Ledger = "stock", LedgerSequence = 1, LossLimitDecibels = 0.1, Outside = new(0, 0), PartsUsed = new(6, 6), Moved = new(0, 0), TotalLoss = new(0, 0), Seed = 1,
        Outputs = [.. Filtered.Select(output => new OutputMatched(output, 104_567, [$"P{output:00000}"], 104_600))],
    });

    private void Fit()
    {
        foreach (var output in Filtered)
            Fit(output);
    }

    private void Fit(int output) => _job.Append(new OutputFitted
    {
        Output = output, Parts = [$"P{output:00000}"], MeasuredPicofarads = 104_600, StandardUncertaintyPicofarads = 50, WantedPicofarads = 104_567, LossDecibels = 0, LedgerSequence = 2,
    });

    private void Through(JobStage stage, int[] outputs, Func<int, JournalEvent> result)
    {
        _job.Append(new StageStarted(stage, outputs));
        foreach (var output in outputs)
            _job.Append(result(output));
        _job.Append(new StageEnded(stage));
    }
}
