using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Commands;

namespace AutoSweep.Worker.Tests.Commands;

public sealed class CommandLineTests
{
    [Theory]
    [InlineData]
    [InlineData("sweeep")]
    [InlineData("sweep")]
    [InlineData("sweep", "--job", "x", "--settle", "61")]
    [InlineData("sweep", "--job", "x", "--amplifier-gain", "0")]
    [InlineData("sweep", "--job", "x", "--clock-rate", "0")]
    [InlineData("demo", "--clock-rate", "-1")]
    [InlineData("demo", "--no-such-flag")]
    public async Task A_command_line_that_cannot_be_understood_is_bad_usage(params string[] arguments) =>
        Assert.Equal(JobOutcome.BadUsage, await RootCommandLine.RunAsync(arguments));

    [Theory]
    [InlineData("--help")]
    [InlineData("--version")]
    [InlineData("sweep", "--help")]
    public async Task Help_and_version_are_no_fault(params string[] arguments) =>
        Assert.Equal(JobOutcome.Success, await RootCommandLine.RunAsync(arguments));
}
