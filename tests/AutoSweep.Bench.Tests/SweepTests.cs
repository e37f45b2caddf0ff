using AutoSweep.Bench.Tests.Support;

namespace AutoSweep.Bench.Tests;

public sealed class SweepTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    [Theory]
    [InlineData("small")]
    [InlineData("no-amplifier")]
    public async Task A_hands_free_sweep_ends_by_itself_with_every_output_once_and_near_its_true_peak(string name)
    {
        await using var bench = await ServedBench.StartAsync(name, "sweep", rate: 40);

        var run = await Run.WorkerAsync(["sweep", .. bench.Flags(_folder.Path)]);

        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        var (exitCode, text) = await ServedBench.ScoreAsync(name, _folder.Path);
        Assert.True(exitCode == 0, text + run.Output);
    }

    [Fact]
    public async Task A_bench_file_says_how_the_bench_is_wired_and_flags_say_it_louder()
    {
        await using var bench = await ServedBench.StartAsync("small", "sweep", rate: 40);
        var flags = bench.Flags(_folder.File("job")).ToList();
        var wiring = _folder.Write("bench.json", $$"""
            { "meter": "TCPIP::127.0.0.1::1::SOCKET", "fixture": "{{bench.Fixture}}", "calibration": "{{flags[flags.IndexOf("--calibration") + 1]}}", "amplifierGain": 20 }
            """);

        var run = await Run.WorkerAsync(
            "sweep", "--bench", wiring, "--meter", bench.Meter, "--generator", "invented-smallbench-14-60hz", "--job", _folder.File("job"), "--hands-free", "--clock-rate", "40");

        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
    }

    // The person presses Enter when the output that is asked for is clipped; here the simulated hands' own events say when.
    [Fact]
    public async Task A_survey_goes_step_by_step_without_any_tone_being_recognised()
    {
        await using var bench = await ServedBench.StartAsync("small", "survey", rate: 40, "--events");
        var flags = bench.Flags(_folder.Path).Where(flag => flag != "--hands-free");
        using var worker = Programs.Start(Programs.Worker, ["survey", .. flags]);
        var asked = new Queue<string>();

        for (var output = 1; output <= 14; output++)
        {
            while (!(await worker.StandardOutput.ReadLineAsync())!.Contains($"Clip output {output},", StringComparison.Ordinal))
                asked.Enqueue("");
            while ((await bench.NextEventAsync()) is var what && what.GetProperty("event").GetString() != "clip")
                asked.Enqueue("");
            await worker.StandardInput.WriteLineAsync();
        }

        var rest = await Run.EndAsync(worker);
        Assert.True(rest.ExitCode == 0, rest.Output + rest.Errors);
        Assert.Equal(15, File.ReadAllLines(_folder.File("survey.csv")).Length);
    }

    public void Dispose() => _folder.Dispose();
}
