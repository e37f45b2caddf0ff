using AutoSweep.Pages.Tests.BenchPage.Support;
using AutoSweep.Pages.Tests.Support;
using Microsoft.Playwright;
using static AutoSweep.Pages.Tests.BenchPage.Support.AccessRules;

namespace AutoSweep.Pages.Tests.BenchPage;

/// <summary>The questions of a bench where somebody dials and types, against the rules that a program can check; and what other screens see of its wiring.</summary>
public sealed class TypedAccessTests(PageBrowser browser) : IClassFixture<PageBrowser>
{
    private string _asked = "";

    [BrowserTheory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task No_question_of_a_bench_by_hand_breaks_a_rule(ColorScheme scheme)
    {
        await using var served = await ServedPage.StartAsync("--clock-rate", "200");
        var screen = await browser.OpenAsync(served.Address, scheme);
        await screen.WireByHandAsync();
        await screen.BeginJobAsync("Snipe 1", JobAtBench.Smallbench);
        await screen.PressAsync("Begin the sweep");
        List<string> broken = [.. await AskedAsync(screen, "Key")];
        await screen.PressAsync("It is clipped");
        broken.AddRange(await AskedAsync(screen, "Dials"));
        await screen.PressAsync("It stands so");
        broken.AddRange(await AskedAsync(screen, "Level"));
        await screen.Page.FillAsync("#answer", "nothing");
        await screen.PressAsync("Take it");
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("#reply .complaint"));
        broken.AddRange(await AskedAsync(screen, "Level"));

        Assert.True(broken.Count == 0, string.Join("\n", broken));
    }

    [BrowserFact]
    public async Task A_bench_that_was_wired_on_one_screen_is_wired_on_every_other()
    {
        await using var served = await ServedPage.StartAsync();
        var first = await browser.OpenAsync(served.Address);
        var second = await browser.OpenAsync(served.Address);
        await second.SeesAsync("Wire up the bench");

        await first.WireByHandAsync();

        // Nobody touches it.
        await second.OrTellAsync(() => second.Page.GetByText("Wire up the bench").WaitForAsync(new() { State = WaitForSelectorState.Detached }));
    }

    private async Task<IEnumerable<string>> AskedAsync(Screen screen, string kind)
    {
        var asked = await AskedOnPage.NextAsync(screen, _asked);
        Assert.Equal(kind, asked.Kind);
        _asked = asked.Id;
        return await BrokenAsync(screen, $"{kind} question");
    }
}
