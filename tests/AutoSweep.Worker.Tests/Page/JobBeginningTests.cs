using AutoSweep.Core;
using AutoSweep.Worker.Page.Jobs;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page;

public sealed class JobBeginningTests : IDisposable
{
    private static readonly ProfileChoice Small = new("small", Some.Profile, IsOwn: false);

    private readonly TemporaryFolder _data = new();

    public void Dispose() => _data.Dispose();

    [Fact]
    public async Task A_job_is_begun_in_a_folder_of_its_name_and_lies_on_the_bench()
    {
        await using var desk = Desks.In(_data);

        await JobBeginning.BeginAsync(desk, "  Parlour organ 2 ", Small);

        Assert.Equal("Parlour organ 2", desk.NameOfJob);
        Assert.Equal(Some.Profile.Name, desk.Job!.Profile.Name);
        Assert.True(File.Exists(_data.File("jobs/Parlour organ 2/journal.jsonl")));
    }

    [Theory]
    [InlineData("../outside", BenchFault.BadFile)]
    [InlineData("", BenchFault.BadFile)]
    [InlineData("nul", BenchFault.BadFile)]
    [InlineData("Taken", BenchFault.JobInUse)]
    [InlineData("tAKEN", BenchFault.JobInUse)]
    public async Task A_bad_name_and_one_in_use_are_refused_and_nothing_is_made(string name, BenchFault kind)
    {
        await using var desk = Desks.In(_data);
        Directory.CreateDirectory(_data.File("jobs/Taken"));

        Assert.Equal(kind, (await Assert.ThrowsAsync<BenchFaultException>(() => JobBeginning.BeginAsync(desk, name, Small))).Kind);
        Assert.Null(desk.Job);
        Assert.Equal(["Taken"], Directory.GetFileSystemEntries(_data.File("jobs")).Select(Path.GetFileName));
    }

    [Fact]
    public async Task The_name_of_the_job_on_the_bench_is_in_use_too()
    {
        await using var desk = Desks.In(_data);
        await JobBeginning.BeginAsync(desk, "one", Small);

        await Assert.ThrowsAsync<BenchFaultException>(() => JobBeginning.BeginAsync(desk, "one", Small));
    }

    [Fact]
    public async Task Without_a_generator_no_job_is_begun()
    {
        await using var desk = Desks.In(_data);

        var fault = await Assert.ThrowsAsync<BenchFaultException>(() => JobBeginning.BeginAsync(desk, "one", null));

        Assert.Contains("generator", fault.Found, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_data.File("jobs/one")));
    }
}
