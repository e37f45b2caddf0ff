using AutoSweep.Bench.Tests.Support;
using AutoSweep.Pages.Tests.BenchPage.Support;
using AutoSweep.Pages.Tests.Support;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using Microsoft.Playwright;

namespace AutoSweep.Pages.Tests.BenchPage;

/// <summary>The work goes on whatever happens to screens, and screens come back to it.</summary>
public sealed class WatchedWorkTests(PageBrowser browser) : IClassFixture<PageBrowser>
{
    private const string Rate = "20";

    [BrowserFact]
    public async Task A_program_that_was_killed_is_found_again_by_the_open_screen_and_goes_on_where_it_was()
    {
        await using var bench = await ServedBench.StartAsync("small", "survey,sweep", 20);
        await using var served = await StartAsync(bench);
        var screen = await browser.OpenAsync(served.Address);
        await screen.BeginJobAsync("Heron 2", JobAtBench.Smallbench);
        await screen.BeginStageAsync("Begin the survey");
        await screen.EndAsync();
        await screen.BeginStageAsync("Begin the sweep");
        await screen.MiddleAsync(2);

        await served.KillAndRestartAsync("--clock-rate", Rate);

        // Nobody touches the screen: it finds the program again by itself.
        await screen.SeesAsync("Go on with the sweep");
        await screen.AliveAsync();
        await screen.BeginStageAsync("Go on with the sweep");
        await screen.EndAsync();
        var journal = JobReading.Read(Path.Combine(served.Data, "jobs", "Heron 2"));
        var swept = journal.Entries.Select(entry => entry.Event).OfType<AutoSweep.Core.Journal.OutputSwept>().Select(one => one.Output).ToList();
        Assert.Equal(6, swept.Count);
        Assert.Equal(swept.Distinct(), swept);
        var (code, text) = await ServedBench.ScoreAsync("small", Path.Combine(served.Data, "jobs", "Heron 2"));
        Assert.True(code == 0, text);
    }

    [BrowserFact]
    public async Task The_sweep_goes_on_while_no_screen_is_open()
    {
        await using var served = await ServedPage.StartAsync("--simulated", "--sim-bench", "small", "--clock-rate", Rate);
        var screen = await browser.OpenAsync(served.Address);
        await screen.BeginJobAsync("Heron 3", JobAtBench.Smallbench);
        await screen.BeginStageAsync("Begin the survey");
        await screen.MiddleAsync(2);
        await screen.Page.CloseAsync();

        var journal = Path.Combine(served.Data, "jobs", "Heron 3", "journal.jsonl");
        using var limit = new CancellationTokenSource(TimeSpan.FromMilliseconds(PageBrowser.Longest), TimeProvider.System);
        using var watch = new PeriodicTimer(TimeSpan.FromMilliseconds(200), TimeProvider.System);
        while (await watch.WaitForNextTickAsync(limit.Token) && !JournalFile.Read(journal).Entries.Any(entry => entry.Event is AutoSweep.Core.Journal.StageEnded))
        {
        }

        var again = await browser.OpenAsync(served.Address);
        await again.EndAsync();
    }

    [BrowserFact]
    public async Task Two_screens_agree_and_only_one_holds_the_controls_until_it_hands_them_over()
    {
        // So many outputs that the survey is not over before two slow screens have settled who stops it.
        await using var served = await ServedPage.StartAsync("--simulated", "--sim-bench", "demo", "--clock-rate", "5");
        var first = await browser.OpenAsync(served.Address);
        await first.BeginJobAsync("Heron 4", JobAtBench.Quillmark);
        var second = await browser.OpenAsync(served.Address, width: 390, height: 844);
        await first.BeginStageAsync("Begin the survey");

        await second.StateAsync("Reading");
        await first.MiddleAsync(2);
        await second.MiddleAsync(2);
        Assert.Equal(await first.Page.InnerTextAsync("h1"), await second.Page.InnerTextAsync("h1"));
        Assert.Equal("watches", await ControlsOfAsync(second));
        await TryToStopAsync(second);
        await first.MiddleAsync(4);

        await second.PressAsync("Ask for the controls");
        await first.PressAsync("Hand over");
        await second.Page.WaitForSelectorAsync("#controls[data-controls=holds]");
        await first.Page.WaitForSelectorAsync("#controls[data-controls=watches]");
        await second.PressAsync("Stop here");
        await first.Page.WaitForSelectorAsync("#ended[data-progress=Stopped]");
        await second.Page.WaitForSelectorAsync("#ended[data-progress=Stopped]");
    }

    // A watcher's button may be out of reach or refused; in neither case does anything stop.
    private static async Task TryToStopAsync(Screen screen)
    {
        var stop = screen.Page.GetByRole(AriaRole.Button, new() { Name = "Stop here" }).First;
        if (await stop.IsEnabledAsync())
        {
            await stop.ClickAsync();
            await screen.SeesAsync("another screen holds the controls");
        }
    }

    private static Task<string?> ControlsOfAsync(Screen screen) => screen.Page.GetAttributeAsync("#controls", "data-controls");

    private static Task<ServedPage> StartAsync(ServedBench bench) => ServedPage.StartAsync(BenchFolder.Wired(bench), ["--clock-rate", Rate]);
}
