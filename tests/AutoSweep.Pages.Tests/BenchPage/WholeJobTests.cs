using AutoSweep.Bench.Tests.Support;
using AutoSweep.Pages.Tests.BenchPage.Support;
using AutoSweep.Pages.Tests.Support;
using AutoSweep.Worker.Job;
using Microsoft.Playwright;
using Xunit.Abstractions;

namespace AutoSweep.Pages.Tests.BenchPage;

/// <summary>The whole demo job on the page and nowhere else; the simulator plays the hands at the clips, the test those at the screen.</summary>
public sealed class WholeJobTests(PageBrowser browser, ITestOutputHelper output) : IClassFixture<PageBrowser>
{
    private const string Name = "Plover 7";

    // A name that would be a script if the page took it for one.
    private const string Customer = "<script>document.title='caught'</script> & Sons";

    [BrowserFact]
    public async Task From_a_new_job_to_the_record_with_a_reload_in_the_middle_of_every_stage()
    {
        await using var served = await ServedPage.StartAsync("--simulated", "--sim-bench", "demo", "--clock-rate", "60");
        var screen = await browser.OpenAsync(served.Address);
        var began = TimeProvider.System.GetTimestamp();

        await screen.BeginJobAsync(Name, JobAtBench.Quillmark);
        await screen.StageAsync("Begin the survey", middle: 20);
        await screen.StageAsync("Begin the sweep", middle: 10);
        await ReadOldSetAsync(screen);
        await TakePartsInAsync(screen, 200);
        await MatchAndFitAsync(screen);
        await screen.GoAsync("");
        await screen.StageAsync("Begin the check", middle: 10);
        await LevelAsync(screen);
        await screen.StageAsync("Survey it as left", middle: 20);
        await WriteRecordAsync(screen);

        output.WriteLine($"{TimeProvider.System.GetElapsedTime(began).TotalSeconds:0} s from the new job to the record");
        await HoldAsync(Path.Combine(served.Data, "jobs", Name));
        Assert.Empty(screen.Complaints);
        Assert.All(screen.Asked, address => Assert.StartsWith(served.Address.AbsoluteUri, address, StringComparison.Ordinal));
    }

    private static async Task ReadOldSetAsync(Screen screen)
    {
        await screen.PressAsync("Measure what came off");
        await screen.OrTellAsync(() => screen.Page.WaitForFunctionAsync("""
            () => { const top = document.querySelector('#old-title')?.getBoundingClientRect().top ?? -1; return top >= 0 && top < innerHeight; }
            """));
        await screen.PressAsync("Read them one after the other");
        await screen.OrTellAsync(() => screen.Page.WaitForFunctionAsync("() => Number(document.querySelector('#last-old')?.dataset.output ?? 0) >= 60"));
        await screen.ReloadAsync();
        await screen.SeesAsync("47 of 47 written down");
    }

    private static async Task TakePartsInAsync(Screen screen, int parts)
    {
        await screen.PressAsync("Begin");
        await screen.Page.WaitForFunctionAsync("() => parseInt(document.querySelector('#count')?.textContent ?? '0') >= 30");
        await screen.ReloadAsync();
        await screen.TakenInAsync(parts);
        await screen.PressAsync("End of the bag");
        await screen.SeesAsync($"{parts} parts taken in.");
    }

    private static async Task MatchAndFitAsync(Screen screen)
    {
        await screen.GoAsync("parts");
        await screen.PressAsync("Match");
        await screen.SeesAsync("Matched; the parts are reserved.");
        await screen.ReloadAsync();
        await screen.Page.GetByRole(AriaRole.Button, new() { Name = "Fit", Exact = false }).First.ClickAsync();
        await screen.Page.WaitForSelectorAsync("#solder");
        await screen.ReloadAsync();
        await screen.Page.WaitForSelectorAsync("#all-fitted");
    }

    private static async Task LevelAsync(Screen screen)
    {
        await screen.BeginLevellingAsync();
        await screen.StateAsync("Moving");
        await screen.GoAsync("");
        await screen.ReloadAsync();
        await screen.EndAsync();
    }

    private static async Task WriteRecordAsync(Screen screen)
    {
        await screen.GoAsync("record");
        await screen.Page.FillAsync("#customer", Customer);
        await screen.Page.ClickAsync("#write");
        await screen.SeesAsync("The record is written");
        await screen.ReloadAsync();
        var opened = await screen.Page.RunAndWaitForPopupAsync(() => screen.Page.ClickAsync("li[data-file='report.html'] a"));
        await opened.WaitForLoadStateAsync();
        Assert.Contains("& Sons", await opened.InnerTextAsync("body"), StringComparison.Ordinal);
        Assert.NotEqual("caught", await opened.TitleAsync());
        await opened.CloseAsync();
    }

    private static async Task HoldAsync(string job)
    {
        var state = JobReading.Read(job).State;
        Assert.Equal((93, 47, 47, 47), (state.Surveyed.Count, state.Swept.Count, state.Fitted.Count, state.Checked.Count));
        Assert.Equal(93, state.AsLeft.Count);
        Assert.NotEmpty(state.Levelled);
        var (code, text) = await ServedBench.ScoreAsync("demo", job);
        Assert.True(code == 0, text);
    }
}
