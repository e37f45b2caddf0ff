using System.CommandLine;
using AutoSweep.Worker.Commands;
using AutoSweep.Worker.Page;

namespace AutoSweep.Worker.Tests.Commands;

public sealed class ServeFlagsTests
{
    private readonly ServeFlags _flags = new();

    [Fact]
    public void A_simulated_bench_never_writes_over_the_wiring_of_a_real_one_in_the_same_folder()
    {
        Assert.Equal("/data/bench.json", Options("--data", "/data").Desk.Wiring);
        Assert.Equal("/data/simulated-bench.json", Options("--data", "/data", "--simulated").Desk.Wiring);
    }

    [Fact]
    public void Without_a_word_it_listens_on_this_computer_only()
    {
        var options = Options();

        Assert.False(options.NeedsToken);
        Assert.Equal(BenchPageOptions.DefaultPort, options.Port);
        Assert.True(Options("--address", "0.0.0.0").NeedsToken);
    }

    [Theory]
    [InlineData("bench")]
    [InlineData("192.0.2.300")]
    public void What_is_no_address_is_refused_with_what_is_one(string typed)
    {
        var error = Assert.Single(Parse("--address", typed).Errors);

        Assert.StartsWith($"--address {typed}: expected an IP address", error.Message, StringComparison.Ordinal);
    }

    private BenchPageOptions Options(params string[] arguments) => _flags.Options(Parse(arguments));

    private ParseResult Parse(params string[] arguments)
    {
        var command = new Command("serve");
        _flags.AddTo(command);
        return command.Parse(arguments);
    }
}
