using System.Globalization;
using System.Text.Json;
using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Journal;
using AutoSweep.Pages.Tests.BenchPage.Support;
using AutoSweep.Pages.Tests.Support;
using AutoSweep.Worker.Job;
using Xunit.Abstractions;

namespace AutoSweep.Pages.Tests.BenchPage;

/// <summary>The whole job at a bench without any wire, on the page and nowhere else: the panel is read and turned by somebody who types on the page.</summary>
public sealed class ByHandOnPageTests(PageBrowser browser, ITestOutputHelper output) : IClassFixture<PageBrowser>, IDisposable
{
    private const string Name = "Curlew 5";
    private const string Rate = "200";

    // So many that every output finds its own among them; of the dozen of the bench "small", one output does.
    private const int Parts = 160;

    private readonly TemporaryFolder _folder = new();

    private string Bench => _folder.File("hand.json");

    [BrowserFact]
    public async Task The_whole_job_is_done_by_hand_and_eye_on_the_page()
    {
        await MakeBenchAsync();
        await using var panel = new TypedProgram(Programs.Simulator, "panel", "--bench", Bench, "--clock-rate", Rate);
        await using var served = await ServedPage.StartAsync("--clock-rate", Rate);
        var screen = await browser.OpenAsync(served.Address);
        var person = new PageOperator(panel, screen);
        var began = TimeProvider.System.GetTimestamp();

        await screen.WireByHandAsync();
        await screen.BeginJobAsync(Name, JobAtBench.Smallbench);
        await person.StageAsync("Begin the survey");
        person.Misreads(4, factor: 10);
        person.Misreads(7, factor: 1.4);
        await person.StageAsync("Begin the sweep");
        await StockAsync(screen, person);
        await MatchAndFitAsync(screen, person);
        await person.StageAsync("Begin the check");
        await WriteRecordAsync(screen);

        output.WriteLine($"{TimeProvider.System.GetElapsedTime(began).TotalSeconds:0} s from the wiring to the record");
        TheMisreadLevelsCountForNothing(person, Path.Combine(served.Data, "jobs", Name));
        ThePeaksAreFoundAndThePartsAreNear(Path.Combine(served.Data, "jobs", Name));
        Assert.Empty(screen.Complaints);
    }

    public void Dispose() => _folder.Dispose();

    private async Task MakeBenchAsync()
    {
        var made = await Run.EndAsync(Programs.Start(Programs.Simulator, "make", "--profile", "invented-smallbench-14-60hz", "--seed", "31",
            "--name", "hand", "--parts", Parts.ToString(CultureInfo.InvariantCulture), "--out", Bench));
        Assert.True(made.ExitCode == 0, made.Errors);
    }

    private static async Task StockAsync(Screen screen, PageOperator person)
    {
        await screen.GoAsync("stock");
        await screen.Page.FillAsync("#accuracy", "0.1");
        await screen.PressAsync("Begin");
        await person.TakePartsInAsync(Parts);
        await screen.PressAsync("End of the bag");
        await screen.SeesAsync($"{Parts} parts taken in.");
    }

    private static async Task MatchAndFitAsync(Screen screen, PageOperator person)
    {
        await screen.GoAsync("parts");
        await screen.PressAsync("Match");
        await screen.SeesAsync("Matched; the parts are reserved.");
        await screen.Page.FillAsync("#accuracy", "0.1");
        await screen.OrTellAsync(() => screen.Page.Locator("button[data-key=f]").ClickAsync());
        await person.FitAsync();
    }

    private static async Task WriteRecordAsync(Screen screen)
    {
        await screen.GoAsync("record");
        await screen.Page.ClickAsync("#write");
        await screen.SeesAsync("The record is written");
    }

    private static void TheMisreadLevelsCountForNothing(PageOperator person, string job)
    {
        Assert.Contains("Type the level again", Assert.Single(person.Corrected), StringComparison.Ordinal);
        Assert.Equal(1, person.TakenBack);
        // The journal keeps what was taken back, and that it was; the doubted level was never one.
        var events = JobReading.Read(job).Entries.Select(entry => entry.Event).ToList();
        Assert.Single(events.OfType<EntryWithdrawn>());
        var state = JobReading.Read(job).State;
        Assert.Equal(events.OfType<LevelRead>().Count(read => read.Stage == JobStage.Sweep) - 1, state.SweepReadings.Values.Sum(readings => readings.Count));
    }

    // Four standard deviations, and what a search by hand may lose taken as far: as where the whole job is done in the terminal.
    private void ThePeaksAreFoundAndThePartsAreNear(string job)
    {
        var state = JobReading.Read(job).State;
        Assert.Equal((14, 6, 6, 6), (state.Surveyed.Count, state.Swept.Count, state.Fitted.Count, state.Checked.Count));
        var bench = Read(Bench);
        var truth = bench.GetProperty("truth").GetProperty("outputs").EnumerateArray().Where(one => one.TryGetProperty("peak", out _))
            .ToDictionary(one => one.GetProperty("output").GetInt32(), one => one.GetProperty("peak"));
        var drawer = bench.GetProperty("parts").EnumerateArray().Select(part => part.GetProperty("picofarads").GetDouble()).ToList();
        Assert.Equal(truth.Keys.Order(), state.Swept.Keys);
        foreach (var sweep in Read(Path.Combine(job, "results.json")).GetProperty("sweeps").EnumerateArray())
        {
            var peak = truth[sweep.GetProperty("swept").GetProperty("output").GetInt32()];
            var off = sweep.GetProperty("peakAtNominalMainsPicofarads").GetDouble() - peak.GetProperty("picofarads").GetDouble();
            Assert.InRange(Math.Abs(off), 0, 4 * sweep.GetProperty("peakAtNominalMainsSdPicofarads").GetDouble());
            Assert.InRange(LossDecibels(off, peak), 0, 0.05 * Math.Pow(4 / 2.6, 2));
        }

        Assert.All(state.Fitted.Values, fitted =>
        {
            var real = fitted.Parts.Sum(part => drawer[int.Parse(part[1..], CultureInfo.InvariantCulture) - 1]);
            var peak = truth[fitted.Output];
            Assert.InRange(LossDecibels(real - peak.GetProperty("picofarads").GetDouble(), peak), 0, 0.15);
        });
    }

    // Half-power half-widths off the peak (any textbook on resonance).
    private static double LossDecibels(double off, JsonElement peak) => 10 * Math.Log10(1 + Math.Pow(off / peak.GetProperty("halfWidthPicofarads").GetDouble(), 2));

    private static JsonElement Read(string path) => JsonDocument.Parse(File.ReadAllText(path)).RootElement;
}
