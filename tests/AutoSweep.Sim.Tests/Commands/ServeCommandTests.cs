using System.Text.Json;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Commands;

/// <summary>The served bench as a child process.</summary>
public class ServeCommandTests
{
    [Fact]
    public async Task It_says_where_everything_is_serves_it_and_ends_with_its_parents_input()
    {
        using var process = SimProgram.Start("serve", "--bench", "small", "--clock-rate", "60", "--hands", "none", "--fixture", "tcp");
        var ready = JsonDocument.Parse((await process.StandardOutput.ReadLineAsync())!).RootElement;
        Assert.Equal(60, ready.GetProperty("clockRate").GetDouble());
        Assert.True(File.Exists(ready.GetProperty("calibration").GetString()));
        Assert.True(File.Exists(ready.GetProperty("generator").GetString()));
        Assert.Equal("AutoSweep,Simulated bench meter,SIM-M-small,1.0", await AskAsync(ready, "meter"));
        Assert.Equal("AutoSweep,Simulated relay fixture,SIM-F-small,1.0", await AskAsync(ready, "fixture"));
        process.StandardInput.Close();
        await process.WaitForExitAsync().WaitAsync(Patience.Limit, TimeProvider.System);
        Assert.Equal(0, process.ExitCode);
    }

    [LinuxFact]
    public async Task Its_fixture_is_a_pseudo_terminal_and_its_events_tell_only_what_the_hands_do()
    {
        using var process = SimProgram.Start("serve", "--bench", "small", "--clock-rate", "1000", "--hands", "sweep", "--events");
        var ready = JsonDocument.Parse((await process.StandardOutput.ReadLineAsync())!).RootElement;
        Assert.StartsWith("ASRL/dev/pts/", ready.GetProperty("fixture").GetString(), StringComparison.Ordinal);
        await process.StandardOutput.ReadLineAsync();
        var clip = JsonDocument.Parse((await process.StandardOutput.ReadLineAsync())!).RootElement;
        Assert.Equal(["seconds", "event", "phase", "output"], clip.EnumerateObject().Select(field => field.Name));
        process.StandardInput.Close();
        await process.WaitForExitAsync().WaitAsync(Patience.Limit, TimeProvider.System);
        Assert.Equal(0, process.ExitCode);
    }

    [Theory]
    [InlineData(3, "no bench \"nowhere\"", "serve", "--bench", "nowhere")]
    [InlineData(1, "expected survey", "serve", "--bench", "small", "--hands", "dance")]
    [InlineData(1, "above 0", "serve", "--bench", "small", "--clock-rate", "0")]
    [InlineData(1, "--bench", "serve")]
    public async Task Bad_input_gets_a_message(int code, string message, params string[] arguments)
    {
        var (ended, _, errors) = await SimProgram.RunAsync(arguments);
        Assert.Equal(code, ended);
        Assert.Contains(message, errors, StringComparison.Ordinal);
    }

    private static async Task<string> AskAsync(JsonElement ready, string instrument)
    {
        var port = ready.GetProperty(instrument).GetString()!.Split("::")[2];
        using var client = new TcpClientLines(int.Parse(port, System.Globalization.CultureInfo.InvariantCulture));
        await client.SendAsync("*IDN?\n");
        return await client.LineAsync();
    }
}
