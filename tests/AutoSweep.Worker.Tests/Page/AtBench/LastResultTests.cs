using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.AtBench;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.AtBench;

public sealed class LastResultTests : IDisposable
{
    private readonly JobRecord _job = JobRecord.Rehearse(Some.Profile, "AutoSweep test", TimeProvider.System);

    public void Dispose() => _job.Dispose();

    [Fact]
    public void A_new_job_has_none() => Assert.Null(LastResult.Of(_job.State));

    [Fact]
    public void The_latest_of_all_stages_is_taken_back_first_and_then_the_one_before()
    {
        _job.Append(Some.Surveyed(3));
        var swept = _job.Append(Some.Swept(9));

        Assert.Equal(new(JobStage.Sweep, swept.Sequence, 9), LastResult.Of(_job.State));

        _job.Append(new EntryWithdrawn(swept.Sequence));
        Assert.Equal((JobStage.Survey, 3), (LastResult.Of(_job.State)!.Stage, LastResult.Of(_job.State)!.Output));
    }

    [Fact]
    public void What_fitted_parts_hang_on_is_not_offered()
    {
        _job.Append(Some.Swept(9));
        _job.Append(new OutputFitted { Output = 9, Parts = ["P00001"], MeasuredPicofarads = 104_600, StandardUncertaintyPicofarads = 50,
            WantedPicofarads = 104_567, LossDecibels = 0, LedgerSequence = 2 });

        Assert.Null(LastResult.Of(_job.State));
    }
}
