using System.CommandLine;
using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Commands;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Commands;

public sealed class JobFlagsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string Job => _folder.File("job");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_new_job_holds_the_named_generator()
    {
        using var record = Open("--job", Job, "--generator", "invented-smallbench-14-60hz");

        Assert.Equal(Some.Profile.Name, record.Profile.Name);
    }

    [Fact]
    public void A_misspelt_generator_leaves_no_folder_behind()
    {
        var fault = Assert.Throws<BenchFaultException>(() => Open("--job", Job, "--generator", "invented-smalbench-14-60hz"));

        Assert.Equal(BenchFault.BadFile, fault.Kind);
        Assert.False(Directory.Exists(Job));
    }

    [Fact]
    public void A_new_job_without_a_generator_is_refused_and_its_folder_let_go()
    {
        var fault = Assert.Throws<BenchFaultException>(() => Open("--job", Job));

        Assert.Contains("--generator", fault.WhatToDo, StringComparison.Ordinal);
        using var again = Open("--job", Job, "--generator", "invented-smallbench-14-60hz");
    }

    [Fact]
    public void A_folder_that_holds_a_job_is_not_begun_anew()
    {
        Open("--job", Job, "--generator", "invented-smallbench-14-60hz").Dispose();

        var fault = Assert.Throws<BenchFaultException>(() => Open("--job", Job, "--generator", "invented-smallbench-14-60hz"));

        Assert.Contains("--resume", fault.AtTerminal, StringComparison.Ordinal);
    }

    [Fact]
    public void Resume_goes_on_with_what_is_done_and_needs_no_generator()
    {
        using (var first = Open("--job", Job, "--generator", "invented-smallbench-14-60hz"))
        {
            first.Append(new StageStarted(JobStage.Sweep, [9, 10]));
            first.Append(Some.Swept(9));
        }

        using var record = Open("--job", Job, "--resume");

        Assert.Equal([10], record.State.Missing(JobStage.Sweep));
    }

    [Fact]
    public void Resume_where_there_is_no_job_says_what_to_do()
    {
        var fault = Assert.Throws<BenchFaultException>(() => Open("--job", Job, "--resume"));

        Assert.Equal(BenchFault.BadFile, fault.Kind);
        Assert.Contains("--resume", fault.AtTerminal, StringComparison.Ordinal);
    }

    private static JobRecord Open(params string[] arguments)
    {
        var flags = new JobFlags();
        var command = new RootCommand();
        flags.AddTo(command);
        var parsed = command.Parse(arguments);
        Assert.Empty(parsed.Errors);
        return flags.Open(parsed);
    }
}
