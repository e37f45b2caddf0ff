using System.Globalization;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using AutoSweep.Bench.Tests.Support;

namespace AutoSweep.Bench.Tests;

/// <summary><c>autosweep fixture</c> as a process, against the simulated fixture and LCR meter over their wires.</summary>
public sealed class FixtureCalibrationTests : IDisposable
{
    private const double Rate = 40;

    private readonly TemporaryFolder _folder = new();

    private string CalibrationFile => _folder.File("fixture.calibration.json");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_sweep_with_the_file_that_calibrate_wrote_finds_every_true_peak()
    {
        await using var bench = await ServedBench.StartAsync("small", "sweep", Rate);
        var calibrated = await FixtureAsync(bench, "calibrate", "--out", CalibrationFile);
        Assert.True(calibrated.ExitCode == 0, calibrated.Output + calibrated.Errors);

        var flags = bench.Flags(_folder.File("job")).ToList();
        flags[flags.IndexOf("--calibration") + 1] = CalibrationFile;
        var run = await Run.WorkerAsync(["sweep", .. flags]);

        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        var (exitCode, text) = await ServedBench.ScoreAsync("small", _folder.File("job"));
        Assert.True(exitCode == 0, text);
    }

    [Fact]
    public async Task The_file_names_fixture_meter_day_and_temperature_and_gives_each_uncertainty()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", Rate, "--fixture", "tcp");
        await FixtureAsync(bench, "calibrate", "--out", CalibrationFile);
        using var file = JsonDocument.Parse(File.ReadAllText(CalibrationFile));
        var root = file.RootElement;
        Assert.Equal("SIM-F-small", root.GetProperty("fixtureSerial").GetString());
        Assert.Contains("SIM-L-small", root.GetProperty("meter").GetString(), StringComparison.Ordinal);
        Assert.InRange(root.GetProperty("temperatureCelsius").GetDouble(), 20, 30);
        Assert.Equal(16, root.GetProperty("relayStandardUncertaintiesPicofarads").GetArrayLength());
        Assert.NotEqual(default, root.GetProperty("date").GetDateTime());
    }

    [Theory]
    [InlineData("3:stuckOpen", "relay 3 does not switch")] // 200 pF, no more than a stray: which of both cannot be told
    [InlineData("9:stuckOpen", "relay 9 is stuck open")]
    [InlineData("14:stuckClosed", "relay 14 is stuck closed")]
    [InlineData("5:leaking", "relay 5 or its capacitor leaks")]
    public async Task A_faulty_relay_is_named_and_no_file_written(string fault, string named)
    {
        await using var bench = await ServedBench.StartAsync("small", "none", Rate, "--fixture", "tcp", "--relay-faults", fault);
        var run = await FixtureAsync(bench, "calibrate", "--out", CalibrationFile);
        Assert.True(run.ExitCode == 11, run.Output + run.Errors);
        Assert.Contains(named, run.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists(CalibrationFile));
    }

    [Fact]
    public async Task A_check_says_that_the_makers_calibration_holds_and_that_a_changed_one_does_not()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", Rate, "--fixture", "tcp");
        var holds = await FixtureAsync(bench, "check", "--calibration", bench.Calibration);
        Assert.True(holds.ExitCode == 0, holds.Output + holds.Errors);
        Assert.Contains("still holds", holds.Output, StringComparison.Ordinal);

        var changed = File.ReadAllText(bench.Calibration).Replace("\"relaysPicofarads\": [", "\"relaysPicofarads\": [1", StringComparison.Ordinal);
        var off = await FixtureAsync(bench, "check", "--calibration", _folder.Write("changed.json", changed));
        Assert.True(off.ExitCode == 13, off.Output + off.Errors);
        Assert.Contains("no longer holds", off.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_calibration_of_another_fixture_is_not_checked()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", Rate, "--fixture", "tcp");
        var other = _folder.Write("other.json", File.ReadAllText(bench.Calibration).Replace("SIM-F-small", "SIM-F-other", StringComparison.Ordinal));
        Assert.Equal(7, (await FixtureAsync(bench, "check", "--calibration", other)).ExitCode);
    }

    [Fact]
    public async Task A_driver_that_measures_no_capacitance_or_is_not_there_is_a_bad_file_and_a_missing_fixture_is_named()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", Rate, "--fixture", "tcp");
        Assert.Equal(3, (await FixtureAsync(bench, "calibrate", "--out", CalibrationFile, "--capacitance-meter-driver", "none")).ExitCode);
        var run = await Run.WorkerAsync("fixture", "calibrate", "--out", CalibrationFile);
        Assert.Equal(4, run.ExitCode);
        Assert.Contains("--fixture", run.Errors, StringComparison.Ordinal);
    }

    // The person reads a meter that has no port, here the simulated one over a line of the test's own, and types what it shows.
    [Fact]
    public async Task Without_a_meter_port_the_values_are_typed_and_one_can_be_taken_back()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", Rate, "--fixture", "tcp");
        using var handheld = await HandheldAsync(bench);
        using var reader = new StreamReader(handheld.GetStream());
        using var worker = Programs.Start(
            Programs.Worker, "fixture", "calibrate", "--fixture", bench.Fixture, "--out", CalibrationFile, "--clock-rate", "40", "--meter-accuracy", "0.05");
        for (var question = 0; await QuestionAsync(worker.StandardOutput); question++)
        {
            await handheld.GetStream().WriteAsync("*TRG\n"u8.ToArray());
            var farads = double.Parse((await reader.ReadLineAsync())!.Split(',')[0], CultureInfo.InvariantCulture);
            await worker.StandardInput.WriteLineAsync(question switch
            {
                3 => "77n", // a slip ...
                4 => "u", // ... taken back
                _ => string.Create(CultureInfo.InvariantCulture, $"{farads * 1e9:0.#####}n"),
            });
        }

        var run = await Run.EndAsync(worker);
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        Assert.Equal(0, (await FixtureAsync(bench, "check", "--calibration", CalibrationFile)).ExitCode);
    }

    private static async Task<bool> QuestionAsync(StreamReader output)
    {
        var text = new StringBuilder();
        var letter = new char[1];
        while (await output.ReadAsync(letter) == 1)
        {
            if (text.Append(letter[0]).ToString().EndsWith("stops):", StringComparison.Ordinal))
                return true;
        }

        return false;
    }

    private static async Task<TcpClient> HandheldAsync(ServedBench bench)
    {
        var client = new TcpClient();
        await client.ConnectAsync("127.0.0.1", int.Parse(bench.CapacitanceMeter.Split("::")[2], CultureInfo.InvariantCulture));
        await client.GetStream().WriteAsync("*RST;:CORR:OPEN:STAT ON;:TRIG:SOUR BUS\n"u8.ToArray());
        return client;
    }

    private static Task<Run> FixtureAsync(ServedBench bench, string command, params IEnumerable<string> more) => Run.WorkerAsync(
        ["fixture", command, "--fixture", bench.Fixture, "--capacitance-meter", bench.CapacitanceMeter, "--clock-rate", "40", .. more]);
}
