using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Stock;
using AutoSweep.Pages.Tests.BenchPage.Support;
using AutoSweep.Pages.Tests.Support;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Pages.Tests.BenchPage;

/// <summary>What happens on the page when a plug is pulled, or the program killed, while parts come in.</summary>
public sealed class UnpluggedOnPageTests(PageBrowser browser) : IClassFixture<PageBrowser>
{
    private const double Rate = 10;

    private const int Parts = 12;

    [BrowserFact]
    public async Task A_capacitance_meter_that_is_unplugged_is_missed_by_name_and_every_part_comes_in_once()
    {
        await using var bench = await ServedBench.StartAsync("small", "parts", Rate, "--unplugging");
        await using var served = await StartAsync(bench);
        var screen = await browser.OpenAsync(served.Address);
        await screen.GoAsync("stock");
        await screen.PressAsync("Begin");
        await TakenAsync(screen, 3);

        await bench.UnplugAsync("capacitanceMeter");

        await screen.StateAsync("Paused");
        await screen.SeesAsync("No capacitance meter: plug it in, and the work goes on by itself");
        await screen.SeesAsync($"The capacitance meter at {bench.CapacitanceMeter} is gone.");
        await screen.OrTellAsync(() => screen.Page.WaitForFunctionAsync("() => document.documentElement.dataset.sound === 'question'"));
        // Out until all of it was seen, however slow the screen is; nobody touches that.
        await bench.PlugInAsync("capacitanceMeter");
        await TakenAsync(screen, Parts);
        await screen.PressAsync("End of the bag");
        await screen.SeesAsync($"{Parts} parts taken in.");
        Assert.Equal(Parts, InLedger(served));
    }

    [BrowserFact]
    public async Task After_a_kill_in_the_middle_every_part_that_was_told_is_in_the_ledger_and_the_rest_comes_in_afterwards()
    {
        // A drawer that is not empty before the kill comes, however late that is.
        await using var bench = await ServedBench.StartAsync("demo", "parts", Rate);
        var parts = bench.Ready.GetProperty("parts").GetInt32();
        await using var served = await StartAsync(bench);
        var screen = await browser.OpenAsync(served.Address);
        await screen.GoAsync("stock");
        await screen.Page.EvaluateAsync("window.isBefore = true");
        await screen.PressAsync("Begin");
        await TakenAsync(screen, 4);

        await served.KillAndRestartAsync("--clock-rate", "10");

        var kept = InLedger(served);
        Assert.InRange(kept, 4, parts);
        // The screen finds the program again by itself, and offers what was being done.
        await screen.OrTellAsync(() => screen.Page.WaitForFunctionAsync("() => !window.isBefore"));
        await screen.AliveAsync();
        await screen.SeesAsync($"{kept} free");
        await screen.PressAsync("Begin");
        await TakenAsync(screen, 1);
        await screen.PressAsync("End of the bag");
        await screen.SeesAsync("taken in.");
        Assert.InRange(InLedger(served), kept + 1, parts + 1);
    }

    private static Task TakenAsync(Screen screen, int parts) => screen.OrTellAsync(() => screen.Page.WaitForFunctionAsync(
        "n => parseInt(document.querySelector('#count')?.textContent ?? '0') >= n", parts));

    private static int InLedger(ServedPage served) => new StockLedger(DataFolder.LedgerAt(served.Data), TimeProvider.System).Read().Entries
        .Select(entry => entry.Event).OfType<PartsTakenIn>().Sum(taken => taken.Parts.Count);

    private static Task<ServedPage> StartAsync(ServedBench bench) => ServedPage.StartAsync(BenchFolder.Wired(bench), ["--clock-rate", FormattableString.Invariant($"{Rate}")]);
}
