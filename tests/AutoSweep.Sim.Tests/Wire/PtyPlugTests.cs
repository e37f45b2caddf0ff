using System.Text;
using AutoSweep.Sim.Tests.Support;
using AutoSweep.Sim.Wire;

namespace AutoSweep.Sim.Tests.Wire;

/// <summary>A serial line that is unplugged, as a client of the operating system sees it.</summary>
public class PtyPlugTests
{
    // Two seconds of a clock that runs ten times faster.
    private static readonly TimeSpan Gap = TimeSpan.FromSeconds(2);

    [LinuxFact]
    public async Task Its_name_is_gone_for_a_while_and_comes_back_with_another_line_to_the_same_instrument()
    {
        using var bench = new TestBench();
        using var plug = new PtyPlug(bench.Fixture, new Sim.Clock.SimulatedClock(10));
        using var end = new CancellationTokenSource();
        var running = plug.RunAsync(end.Token);
        Assert.Equal($"ASRL{plug.Path}::INSTR", plug.Resource);
        var before = File.ResolveLinkTarget(plug.Path, returnFinalTarget: true)!.FullName;
        using var client = Open(plug.Path);
        Assert.Equal("1", await AskAsync(client, "ROUT:CLOS (@2);*OPC?"));

        plug.Unplug(Gap);

        await Assert.ThrowsAnyAsync<Exception>(() => AskAsync(client, "*IDN?"));
        while (!File.Exists(plug.Path)) await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System);
        using var again = Open(plug.Path);
        Assert.Equal("(@2)", await AskAsync(again, "ROUT:CLOS:STAT?"));
        Assert.StartsWith("/dev/pts/", before, StringComparison.Ordinal);
        await end.CancelAsync();
        await running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ContinueOnCapturedContext);
    }

    [LinuxFact]
    public async Task Pulled_without_an_end_it_comes_back_when_it_is_pushed_in()
    {
        using var bench = new TestBench();
        using var plug = new PtyPlug(bench.Fixture, new Sim.Clock.SimulatedClock(10));
        using var end = new CancellationTokenSource();
        var running = plug.RunAsync(end.Token);

        plug.Unplug(Timeout.InfiniteTimeSpan);

        while (File.Exists(plug.Path)) await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System);
        plug.PushIn();
        while (!File.Exists(plug.Path)) await Task.Delay(TimeSpan.FromMilliseconds(5), TimeProvider.System);
        using var again = Open(plug.Path);
        Assert.Equal("1", await AskAsync(again, "*OPC?"));
        await end.CancelAsync();
        await running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ContinueOnCapturedContext);
    }

    private static FileStream Open(string path) => new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite, bufferSize: 0);

    private static Task<string> AskAsync(FileStream client, string message) =>
        Task.Run(() => Ask(client, message)).WaitAsync(Patience.Limit, TimeProvider.System);

    // A line that is hung up ends: end of file at the next read, or an error at the next write.
    private static string Ask(FileStream client, string message)
    {
        client.Write(Encoding.ASCII.GetBytes(message + "\n"));
        var answer = new StringBuilder();
        for (var letter = client.ReadByte(); letter != '\n'; letter = client.ReadByte())
            answer.Append(letter == -1 ? throw new IOException("hung up") : (char)letter);
        return answer.ToString();
    }
}
