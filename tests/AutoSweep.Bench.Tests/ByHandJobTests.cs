using System.Globalization;
using System.Text.Json;
using AutoSweep.Bench.Tests.Support;

namespace AutoSweep.Bench.Tests;

/// <summary>The whole job at a bench without any wire: both programs' terminals, and between them somebody who reads the one and types into the other.</summary>
public sealed class ByHandJobTests : IDisposable
{
    private const int Parts = 160;

    // Both programs' clocks: who reads and types takes no time here, and a minute of warm-up is gone in a third of a second.
    private const string Rate = "200";

    private const string Wiring = """
        {
          "meter": "eye", "eye": { "accuracyPercent": 1 }, "amplifierGain": 20,
          "fixture": "hand",
          "box": {
            "name": "an invented box of 1 %",
            "decades": [ { "stepPicofarads": 100000 }, { "stepPicofarads": 10000 }, { "stepPicofarads": 1000 }, { "stepPicofarads": 100 } ]
          }
        }
        """;

    private readonly TemporaryFolder _folder = new();

    private string Job => _folder.File("job");

    [Fact]
    public async Task The_whole_job_is_done_by_hand_and_eye_in_the_terminal()
    {
        var bench = await MakeBenchAsync();
        await using var panel = new TypedProgram(Programs.Simulator, "panel", "--bench", bench, "--clock-rate", Rate);
        var person = new HandOperator(panel);

        await StockAsync(person);
        await person.WorkAsync(["survey", "--generator", "invented-smallbench-14-60hz", .. AtTheBench]);
        person.MisreadsOnce(at: 3, factor: 1.4);
        var swept = await person.WorkAsync(["sweep", "--resume", .. AtTheBench]);
        await person.WorkAsync("match", "--job", Job, "--stock", Stock);
        await person.WorkAsync("fit", "--job", Job, "--stock", Stock, "--bench", _folder.File("bench.json"));
        await person.WorkAsync(["check", "--resume", .. AtTheBench]);
        await person.WorkAsync("curve", "edit", "4", "--job", Job, "--level-mv", "3.4");
        await person.WorkAsync(["level", "--resume", "--least-gap", "0.2", "--understood", .. AtTheBench]);
        await person.WorkAsync(["survey", "--resume", "--as-left", .. AtTheBench]);
        var wrong = await person.WorkAsync("diagnose", "--job", Job);
        await person.WorkAsync("report", "--job", Job, "--stock", Stock);

        TheMisreadLevelIsOnRecordAndCountsForNothing(person, swept);
        PeaksAreWithinWhatTheyStateAndPartsAreNear(Bench(bench));
        TheLevelsAreExplainedAndTheMagnetIsInItsBand(person);
        TheRecordSaysHowTheMainsWereTaken();
        // All wheels turn on this bench; that an eye counts no tone must not be held against them.
        Assert.DoesNotContain(wrong, line => line.Contains("hum without tone", StringComparison.Ordinal));
    }

    public void Dispose() => _folder.Dispose();

    private string Stock => _folder.File("stock");

    private string[] AtTheBench => ["--job", Job, "--bench", _folder.File("bench.json"), "--clock-rate", Rate];

    private async Task<string> MakeBenchAsync()
    {
        _folder.Write("bench.json", Wiring);
        var bench = _folder.File("hand.json");
        var made = await Run.EndAsync(Programs.Start(Programs.Simulator, "make", "--profile", "invented-smallbench-14-60hz", "--seed", "31",
            "--name", "hand", "--parts", Parts.ToString(CultureInfo.InvariantCulture), "--out", bench));
        Assert.True(made.ExitCode == 0, made.Errors);
        return bench;
    }

    // Typed at the question for each part, as they come off the meter.
    private async Task StockAsync(HandOperator person)
    {
        var values = await person.MeasurePartsAsync(Parts);
        await using var intake = new TypedProgram(Programs.Worker, "stock", "intake", "--stock", Stock, "--typed-accuracy", "0.1");
        foreach (var value in values)
            await intake.TypeAsync(value);
        await intake.TypeAsync("q");
        while (await intake.NextAsync() is not null)
        {
        }

        Assert.True(await intake.EndAsync() == 0, await intake.TranscriptAsync());
        Assert.Contains(intake.Seen, line => line.StartsWith($"{Parts} parts taken", StringComparison.Ordinal));
    }

    private void TheMisreadLevelIsOnRecordAndCountsForNothing(HandOperator person, IReadOnlyList<string> terminal)
    {
        Assert.Equal(1, person.TakenBack);
        Assert.Contains("$ u", terminal);
        // The journal keeps both, the reading and that it was taken back.
        var lines = File.ReadAllLines(Path.Combine(Job, "journal.jsonl"));
        Assert.Single(lines, line => line.Contains("withdrawn", StringComparison.OrdinalIgnoreCase));
        var sweeps = Results().GetProperty("sweeps").EnumerateArray().ToList();
        Assert.All(sweeps, sweep => Assert.Equal(sweep.GetProperty("swept").GetProperty("readings").GetInt32(), sweep.GetProperty("readings").GetArrayLength()));
    }

    // Four standard deviations: once in sixteen thousand peaks by chance (normal distribution). A search by hand is to lose at most 0.05 dB in 99 of 100,
    // 2.6 standard deviations; four are (4/2.6)² of that.
    private void PeaksAreWithinWhatTheyStateAndPartsAreNear(JsonElement bench)
    {
        var truth = bench.GetProperty("truth").GetProperty("outputs").EnumerateArray().Where(one => one.TryGetProperty("peak", out _))
            .ToDictionary(one => one.GetProperty("output").GetInt32(), one => one.GetProperty("peak"));
        var sweeps = Results().GetProperty("sweeps").EnumerateArray().ToDictionary(one => one.GetProperty("swept").GetProperty("output").GetInt32());
        Assert.Equal(truth.Keys.Order(), sweeps.Keys.Order());
        Assert.All(truth, one =>
        {
            var found = sweeps[one.Key];
            Assert.True(found.GetProperty("mainsTakenAsNominal").GetBoolean());
            var off = found.GetProperty("peakAtNominalMainsPicofarads").GetDouble() - one.Value.GetProperty("picofarads").GetDouble();
            Assert.InRange(Math.Abs(off), 0, 4 * found.GetProperty("peakAtNominalMainsSdPicofarads").GetDouble());
            Assert.InRange(LossDecibels(off, one.Value), 0, 0.05 * Math.Pow(4 / 2.6, 2));
        });
        var fitted = Results().GetProperty("fitted").EnumerateArray().ToList();
        Assert.Equal(truth.Keys.Order(), fitted.Select(one => one.GetProperty("output").GetInt32()).Order());
        var drawer = bench.GetProperty("parts").EnumerateArray().Select(part => part.GetProperty("picofarads").GetDouble()).ToList();
        Assert.All(fitted, one =>
        {
            var real = one.GetProperty("parts").EnumerateArray().Sum(part => drawer[int.Parse(part.GetString()![1..], CultureInfo.InvariantCulture) - 1]);
            var peak = truth[one.GetProperty("output").GetInt32()];
            Assert.InRange(LossDecibels(real - peak.GetProperty("picofarads").GetDouble(), peak), 0, 0.15);
        });
    }

    private void TheLevelsAreExplainedAndTheMagnetIsInItsBand(HandOperator person)
    {
        var results = Results();
        Assert.Equal(6, results.GetProperty("checked").GetArrayLength());
        Assert.All(results.GetProperty("checked").EnumerateArray(), one => Assert.True(one.GetProperty("isExplained").GetBoolean(), one.ToString()));
        Assert.True(person.Moves > 0, "no rod was moved");
        var four = results.GetProperty("levelled").EnumerateArray().Single(one => one.GetProperty("output").GetInt32() == 4);
        Assert.Equal("inBand", four.GetProperty("ending").GetString());
        Assert.Equal(14, results.GetProperty("asLeft").GetArrayLength());
    }

    private void TheRecordSaysHowTheMainsWereTaken()
    {
        Assert.All(["sweeps.csv", "survey.csv", "as-left.csv", "picking-list.csv", "report.csv", "report.json", "report-customer.html"],
            name => Assert.True(File.Exists(Path.Combine(Job, name)), name));
        Assert.Contains("No tone was counted while outputs 9 to 14 were swept", File.ReadAllText(Path.Combine(Job, "report.html")), StringComparison.Ordinal);
    }

    // Half-power half-widths off the peak (any textbook on resonance).
    private static double LossDecibels(double off, JsonElement peak) =>
        10 * Math.Log10(1 + Math.Pow(off / peak.GetProperty("halfWidthPicofarads").GetDouble(), 2));

    private JsonElement Results() => Bench(Path.Combine(Job, "results.json"));

    private static JsonElement Bench(string path) => JsonDocument.Parse(File.ReadAllText(path)).RootElement;
}
