using AutoSweep.Core;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Commands;

namespace AutoSweep.Worker.Tests.Commands;

public sealed class ExitCodesTests
{
    [Fact]
    public void Every_bench_fault_is_listed_once()
    {
        foreach (var fault in Enum.GetValues<BenchFault>())
            Assert.Single(ExitCodes.All, one => one.Code == (int)fault);
    }

    [Fact]
    public void Codes_are_listed_once_each_in_ascending_order_with_a_meaning()
    {
        var codes = ExitCodes.All.Select(one => one.Code).ToList();

        Assert.Equal(codes.Distinct().Order(), codes);
        Assert.All(ExitCodes.All, one => Assert.NotEqual("", one.Meaning));
    }

    [Fact]
    public void Every_ending_of_a_job_has_a_listed_code()
    {
        foreach (var code in new[] { JobOutcome.Success, JobOutcome.Unforeseen, JobOutcome.BadUsage, JobOutcome.Missed, JobOutcome.StoppedByPerson })
            Assert.Contains(ExitCodes.All, one => one.Code == code);
    }

    [Fact]
    public void A_bench_fault_keeps_its_number_and_any_other_is_unforeseen()
    {
        var outcome = new JobOutcome();
        Assert.Equal(JobOutcome.StoppedByPerson, outcome.ExitCode); // until something else is told

        outcome.Failed(new BenchFaultException(BenchFault.WrongCalibration, "a", "b", "c"));
        Assert.Equal(7, outcome.ExitCode);

        outcome.Failed(new InvalidOperationException("x"));
        Assert.Equal(JobOutcome.Unforeseen, outcome.ExitCode);
        Assert.Equal("x", outcome.Fault!.Message);
    }

    [Fact]
    public void A_complete_plan_is_a_success_unless_the_truth_was_missed()
    {
        var outcome = new JobOutcome();
        outcome.Completed();
        Assert.Equal(0, outcome.ExitCode);

        outcome.MissedTruth();
        Assert.Equal(JobOutcome.Missed, outcome.ExitCode);
    }
}
