using System.Globalization;
using System.Text.Json;
using AutoSweep.Bench.Tests.Support;

namespace AutoSweep.Bench.Tests;

/// <summary>Levelling on real wires: the hands know nothing but what the meter's display says, the worker nothing but the level.</summary>
public sealed class LevelTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    // Every rod of the shipped benches has at least 0.2 mm as found: somebody has put that leaf in.
    [Fact]
    public async Task Outputs_that_are_off_their_targets_are_brought_into_half_a_decibel_and_no_wheel_is_touched()
    {
        await using var bench = await ServedBench.StartAsync("small", "survey,level,asLeft", rate: 40, "--events");
        await SurveyAsync(bench);
        await WantAsync((2, 3.2), (4, 5.9), (6, 3.6));

        var run = await LevelAsync(bench, "--least-gap", "0.2", "--understood");

        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        var levelled = Levelled();
        Assert.All([2, 6], output => Assert.Equal("inBand", levelled.Single(one => one.Output == output).Ending));
        Assert.All(levelled.Where(one => one.Ending == "inBand"), one => Assert.InRange(one.Decibels, -0.25, 0.25));
        var events = await EventsAsync(bench);
        Assert.Contains("lock", events);
        Assert.DoesNotContain("contact", events);
    }

    [Fact]
    public async Task It_is_refused_before_the_recap_and_says_what_is_missing()
    {
        await using var bench = await ServedBench.StartAsync("small", "survey", rate: 40);
        await SurveyAsync(bench);

        var run = await Run.WorkerAsync("level", "--job", _folder.Path, "--resume", "--meter", bench.Meter, "--understood");

        Assert.Equal(16, run.ExitCode);
        Assert.Contains("no capacitor is fitted", run.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_is_begun_before_the_hazard_is_acknowledged()
    {
        await using var bench = await ServedBench.StartAsync("small", "survey", rate: 40);
        await SurveyAsync(bench);

        var run = await LevelAsync(bench);

        Assert.Equal(20, run.ExitCode);
        Assert.Contains("chips its teeth", run.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.DoesNotContain("Level", File.ReadAllText(_folder.File("journal.jsonl")), StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Dispose();

    private async Task SurveyAsync(ServedBench bench)
    {
        var run = await Run.WorkerAsync(["survey", .. bench.Flags(_folder.Path)]);
        Assert.True(run.ExitCode == 0, run.Output + run.Errors);
    }

    private async Task WantAsync(params (int Output, double Millivolts)[] targets)
    {
        foreach (var (output, millivolts) in targets)
        {
            var run = await Run.WorkerAsync("curve", "edit", output.ToString(CultureInfo.InvariantCulture), "--job", _folder.Path,
                "--level-mv", millivolts.ToString(CultureInfo.InvariantCulture));
            Assert.True(run.ExitCode == 0, run.Output + run.Errors);
        }
    }

    private Task<Run> LevelAsync(ServedBench bench, params IEnumerable<string> more) =>
        Run.WorkerAsync(["level", "--resume", "--without-recap", .. bench.Flags(_folder.Path), .. more]);

    private List<(int Output, string Ending, double Decibels)> Levelled() =>
        [.. JsonDocument.Parse(File.ReadAllText(_folder.File("results.json"))).RootElement.GetProperty("levelled").EnumerateArray().Select(one => (
            one.GetProperty("output").GetInt32(), one.GetProperty("ending").GetString()!,
            20 * Math.Log10(one.GetProperty("afterMillivolts").GetDouble() / one.GetProperty("targetMillivolts").GetDouble())))];

    private static async Task<IReadOnlyList<string>> EventsAsync(ServedBench bench)
    {
        List<string> events = [];
        JsonElement told;
        do
        {
            told = await bench.NextEventAsync();
            events.Add(told.GetProperty("event").GetString()!);
        }
        while (told.GetProperty("phase").GetString() != "level" || events[^1] != "end");

        return events;
    }
}
