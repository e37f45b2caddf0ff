using AutoSweep.Bench.Tests.Support;
using AutoSweep.Pages.Tests.BenchPage.Support;
using AutoSweep.Pages.Tests.Support;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Stock;
using Microsoft.Playwright;
using static AutoSweep.Pages.Tests.BenchPage.Support.AccessRules;

namespace AutoSweep.Pages.Tests.BenchPage;

/// <summary>The capacitors that came off, read on the page at the capacitance meter's clips.</summary>
public sealed class OldSetOnPageTests(PageBrowser browser) : IClassFixture<PageBrowser>
{
    private const double Rate = 10;

    [BrowserFact]
    public async Task The_old_set_comes_in_clip_by_clip_with_one_left_out_and_one_that_is_no_capacitor_any_more()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", Rate);
        await using var served = await StartAsync(bench);
        var screen = await browser.OpenAsync(served.Address);
        await screen.BeginJobAsync("Linnet 1", JobAtBench.Smallbench);
        await screen.GoAsync("stock");
        await screen.Page.FillAsync("#old-year", "1958");
        await screen.PressAsync("Read them one after the other");

        // Nobody clips anything on this bench: the state stands, and its keys are all that answers.
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("#state[data-activity=Waiting][data-output='9']"));
        await screen.Page.Keyboard.PressAsync("d");
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("#state[data-output='10']"));
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("#last-old[data-output='9']"));
        var broken = await BrokenAsync(screen, "an old capacitor asked for");
        await screen.Page.Keyboard.PressAsync("o");
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("#state[data-output='11']"));
        // The bench's own screen says where that goes on, and leads there.
        await screen.GoAsync("");
        await screen.SeesAsync("on the page Stock");
        await screen.ReadyForKeysAsync();
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("#state[data-output='11']"));
        await screen.PressAsync("Stop here");
        await screen.SeesAsync("1 of 6 written down");

        Assert.True(!broken.Any(), string.Join("\n", broken));
        var old = Assert.Single(new StockLedger(DataFolder.LedgerAt(served.Data), TimeProvider.System).Read().OldCapacitors.Values);
        Assert.Equal((9, 1958, null), (old.Output, old.MadeIn, old.Measured));
    }

    [BrowserFact]
    public async Task Simulated_hands_clip_every_one_that_is_asked_for()
    {
        await using var bench = await ServedBench.StartAsync("small", "parts", Rate);
        await using var served = await StartAsync(bench);
        var screen = await browser.OpenAsync(served.Address);
        await screen.BeginJobAsync("Linnet 2", JobAtBench.Smallbench);
        await screen.GoAsync("stock");
        await screen.PressAsync("Read them one after the other");
        await screen.SeesAsync("6 of 6 written down");
        Assert.True(await screen.Page.GetByRole(AriaRole.Button, new() { Name = "Read them one after the other" }).IsDisabledAsync());

        var olds = new StockLedger(DataFolder.LedgerAt(served.Data), TimeProvider.System).Read().OldCapacitors.Values.ToDictionary(old => old.Output);
        Assert.All(BenchTruth.Aged("small"), old => Assert.InRange(olds[old.Key].Measured!.Picofarads / old.Value.Picofarads, 0.998, 1.002));
    }

    private static Task<ServedPage> StartAsync(ServedBench bench) => ServedPage.StartAsync(BenchFolder.Wired(bench), ["--clock-rate", FormattableString.Invariant($"{Rate}")]);
}
