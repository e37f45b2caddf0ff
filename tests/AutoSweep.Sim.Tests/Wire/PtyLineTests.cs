using System.Text;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Tests.Support;
using AutoSweep.Sim.Wire;

namespace AutoSweep.Sim.Tests.Wire;

/// <summary>The fixture's serial line as a client of the operating system sees it.</summary>
public class PtyLineTests
{
    [LinuxFact]
    public async Task Clients_may_come_and_go()
    {
        using var bench = new TestBench();
        var line = new PtyLine();
        using var end = new CancellationTokenSource();
        var talk = new Conversation(line, bench.Fixture, new(line, new WireDefinition(), bench.Clock)).RunAsync(end.Token);
        Assert.Equal("1", await AskAsync(line.Path, "ROUT:CLOS (@2);*OPC?"));
        Assert.Equal("(@2)", await AskAsync(line.Path, "ROUT:CLOS:STAT?"));
        Assert.Equal("0,\"No error\"", await AskAsync(line.Path, "\r\nSYST:ERR?\r"));
        await end.CancelAsync();
        await talk.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ContinueOnCapturedContext);
    }

    private static Task<string> AskAsync(string path, string message) =>
        Task.Run(() => Ask(path, message)).WaitAsync(Patience.Limit, TimeProvider.System);

    private static string Ask(string path, string message)
    {
        using var client = new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite, bufferSize: 0);
        client.Write(Encoding.ASCII.GetBytes(message + "\n"));
        var answer = new StringBuilder();
        for (var letter = client.ReadByte(); letter is not ('\n' or -1); letter = client.ReadByte()) answer.Append((char)letter);
        return answer.ToString();
    }
}
