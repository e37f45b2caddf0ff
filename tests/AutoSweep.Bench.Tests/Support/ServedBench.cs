using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>A simulated bench that is being served, known only by the line that it prints.</summary>
internal sealed class ServedBench : IAsyncDisposable
{
    // It ends, or lets a plug go, well within a second here.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    private readonly Process _process;

    private ServedBench(Process process, JsonElement ready, double rate) => (_process, Ready, Rate) = (process, ready, rate);

    public JsonElement Ready { get; }

    public double Rate { get; }

    public string Meter => Text("meter");

    public string Fixture => Text("fixture");

    public string CapacitanceMeter => Text("capacitanceMeter");

    public string Calibration => Text("calibration");

    /// <summary>The flags that the issue fixes for scripts, for this bench.</summary>
    public IEnumerable<string> Flags(string job) =>
    [
        "--generator", Text("generator"), "--job", job, "--meter", Meter, "--meter-driver", "scpi-dmm",
        "--fixture", Fixture, "--calibration", Text("calibration"), "--hands-free",
        "--amplifier-gain", Ready.GetProperty("amplifierGain").GetDouble().ToString(CultureInfo.InvariantCulture),
        "--clock-rate", Rate.ToString(CultureInfo.InvariantCulture),
    ];

    public static async Task<ServedBench> StartAsync(string bench, string hands, double rate, params IEnumerable<string> more)
    {
        var process = Programs.Start(
            Programs.Simulator, ["serve", "--bench", bench, "--hands", hands, "--clock-rate", rate.ToString(CultureInfo.InvariantCulture), .. more]);
        var line = await process.StandardOutput.ReadLineAsync() ?? throw new InvalidOperationException(await process.StandardError.ReadToEndAsync());
        return new(process, JsonDocument.Parse(line).RootElement, rate);
    }

    /// <summary>The next thing that the hands do, when the bench was started with --events.</summary>
    public async Task<JsonElement> NextEventAsync() => JsonDocument.Parse((await _process.StandardOutput.ReadLineAsync())!).RootElement;

    /// <summary>Pulls a plug and waits until it is out; the bench was started with --unplugging.</summary>
    /// <remarks>It stays out until the test pushes it in, which it does when it has seen what it waits for: no number of seconds is enough for every machine.</remarks>
    public async Task UnplugAsync(string instrument)
    {
        await TellAsync($"unplug {instrument}");
        using var limit = new CancellationTokenSource(Longest, TimeProvider.System);
        using var timer = new PeriodicTimer(TimeSpan.FromMilliseconds(5), TimeProvider.System);
        while (await IsInAsync(Text(instrument), limit.Token))
            await timer.WaitForNextTickAsync(limit.Token);
    }

    /// <summary>Pushes a plug in again.</summary>
    public Task PlugInAsync(string instrument) => TellAsync($"plug {instrument}");

    public static async Task<(int ExitCode, string Text)> ScoreAsync(string bench, string job)
    {
        using var process = Programs.Start(Programs.Simulator, "score", "--bench", bench, "--sweeps", Path.Combine(job, "sweeps.csv"));
        var text = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, text);
    }

    public async ValueTask DisposeAsync()
    {
        using (_process)
        {
            _process.StandardInput.Close();
            using var limit = new CancellationTokenSource(Longest, TimeProvider.System);
            try
            {
                await _process.WaitForExitAsync(limit.Token);
            }
            catch (OperationCanceledException)
            {
                _process.Kill(entireProcessTree: true);
                throw new TimeoutException($"The simulator had not ended {Longest.TotalSeconds:0} s after its standard input was closed.");
            }
        }
    }

    private async Task TellAsync(string line)
    {
        await _process.StandardInput.WriteLineAsync(line);
        await _process.StandardInput.FlushAsync();
    }

    // Whether anybody who comes now finds it: its socket's port, or the name of its serial line.
    private static async Task<bool> IsInAsync(string resource, CancellationToken cancellationToken)
    {
        if (resource.StartsWith("ASRL", StringComparison.Ordinal))
            return File.Exists(resource["ASRL".Length..resource.IndexOf("::", StringComparison.Ordinal)]);
        try
        {
            using var client = new TcpClient();
            await client.ConnectAsync(IPAddress.Loopback, int.Parse(resource.Split("::")[2], CultureInfo.InvariantCulture), cancellationToken);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    private string Text(string field) => Ready.GetProperty(field).GetString()!;
}
