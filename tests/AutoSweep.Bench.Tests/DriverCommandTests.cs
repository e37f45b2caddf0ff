using System.Globalization;
using System.Text.Json.Nodes;
using AutoSweep.Bench.Tests.Support;

namespace AutoSweep.Bench.Tests;

/// <summary><c>autosweep driver</c> as a program, on the simulated meter where a meter is needed.</summary>
public sealed class DriverCommandTests : IDisposable
{
    private const double Rate = 5;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_file_that_states_too_little_settling_falls_short_of_the_meter()
    {
        // The simulated detector's time constant with the 3 Hz filter is 0.7 s: within 1 % takes 3.2 s.
        await using var bench = await MeterBench.StartAsync(Rate);
        var driver = CopyOf("scpi-dmm", driver => driver["level"]!["bandwidths"] = new JsonArray(new JsonObject
        {
            ["hertz"] = 3, ["fromToneHertz"] = 3, ["settleSeconds"] = 0.4, ["source"] = "a slip, for this test",
        }));
        var run = await CheckAsync(driver, bench);
        Assert.Equal(17, run.ExitCode);
        Assert.Matches("settling, 3 Hz .*short", run.Output);
    }

    [Fact]
    public async Task A_tone_that_is_not_there_falls_short()
    {
        await using var bench = await MeterBench.StartAsync(Rate);
        var run = await Run.WorkerAsync("driver", "check", "scpi-dmm", "--live", bench.Meter, "--tone", "523", "--clock-rate", Text(Rate));
        Assert.Equal(17, run.ExitCode);
        Assert.Matches("frequency .*short", run.Output);
    }

    [Fact]
    public async Task A_meter_of_another_family_is_refused()
    {
        await using var bench = await MeterBench.StartAsync(Rate);
        var driver = CopyOf("scpi-dmm", driver => driver["identity"] = new JsonArray(new JsonObject { ["maker"] = "Other Works", ["model"] = "*" }));
        var run = await CheckAsync(driver, bench);
        Assert.Equal(6, run.ExitCode);
        Assert.Contains("Other Works", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_capacitance_function_is_checked_and_recorded_too()
    {
        await using var bench = await ServedBench.StartAsync("small", "parts", Rate, "--events");
        while ((await bench.NextEventAsync()).GetProperty("event").GetString() != "clip")
        {
        }

        var driver = CopyOf("scpi-lcr", _ => { });
        var run = await Run.WorkerAsync("driver", "check", driver, "--live", bench.CapacitanceMeter, "--clock-rate", Text(Rate));
        Assert.Equal(0, run.ExitCode);
        Assert.Matches("noise .*ok", run.Output);
        Assert.Matches("time-out and recovery .*ok", run.Output);
        Assert.Equal(0, (await Run.WorkerAsync("driver", "record", driver, "--live", bench.CapacitanceMeter, "--clock-rate", Text(Rate))).ExitCode);
        Assert.Contains("! measure", File.ReadAllText(Path.Combine(driver, "sessions", "recorded.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_session_is_not_written_over()
    {
        await using var bench = await MeterBench.StartAsync(Rate);
        var driver = CopyOf("scpi-dmm", _ => { });
        var run = await Run.WorkerAsync("driver", "record", driver, "--live", bench.Meter, "--session", "plain-meter", "--clock-rate", Text(Rate));
        Assert.Equal(3, run.ExitCode);
        Assert.Matches(@"is\s+there\s+already", run.Errors);
    }

    [Fact]
    public async Task A_driver_in_a_folder_of_ones_own_is_used_on_the_bench()
    {
        await using var bench = await MeterBench.StartAsync(Rate);
        CopyOf("scpi-dmm", driver => driver["name"] = "own-meter", "own-meter");
        var run = await Run.WorkerAsync("driver", "check", "own-meter", "--drivers", _folder.Path, "--live", bench.Meter, "--clock-rate", Text(Rate));
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        var survey = await Run.WorkerAsync(
            "survey", "--job", _folder.File("job"), "--generator", bench.Generator, "--meter", "TCPIP::127.0.0.1::1::SOCKET", "--meter-driver", "own-meter");
        Assert.Equal(3, survey.ExitCode); // not found without the folder
        Assert.Contains("own-meter", survey.Errors, StringComparison.Ordinal);
        survey = await Run.WorkerAsync(
            "survey", "--job", _folder.File("job-2"), "--generator", bench.Generator, "--meter", "TCPIP::127.0.0.1::1::SOCKET", "--meter-driver", "own-meter",
            "--drivers", _folder.Path);
        Assert.Equal(4, survey.ExitCode); // found, and nobody listens on port 1
    }

    private static string Text(double number) => number.ToString(CultureInfo.InvariantCulture);

    private static Task<Run> CheckAsync(string driver, MeterBench bench) =>
        Run.WorkerAsync("driver", "check", driver, "--live", bench.Meter, "--tone", "488", "--clock-rate", Text(Rate));

    private string CopyOf(string driver, Action<JsonNode> change, string? name = null)
    {
        var (from, to) = (Path.Combine(Path.GetDirectoryName(Programs.Worker)!, "drivers", driver), _folder.File(name ?? driver));
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        var json = JsonNode.Parse(File.ReadAllText(Path.Combine(to, "driver.json")))!;
        change(json);
        File.WriteAllText(Path.Combine(to, "driver.json"), json.ToJsonString());
        return to;
    }
}
