using AutoSweep.Pages.Tests.BenchPage.Support;
using AutoSweep.Pages.Tests.Support;
using Microsoft.Playwright;
using static AutoSweep.Pages.Tests.BenchPage.Support.AccessRules;

namespace AutoSweep.Pages.Tests.BenchPage;

/// <summary>Every page against the rules of WCAG 2.2 AA that a program can check (axe-core), by day and by night, and by keyboard alone.</summary>
[Collection(DemoRecordDefinition.Name)]
public sealed class AccessTests(DemoRecord record, PageBrowser browser) : IClassFixture<PageBrowser>
{
    [BrowserTheory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task No_page_breaks_a_rule(ColorScheme scheme)
    {
        await using var served = await ServedPage.StartAsync(FinishedJob.CopyOf(record), []);
        var screen = await browser.OpenAsync(served.Address, scheme);
        List<string> broken = [];
        foreach (var place in FinishedJob.Pages)
        {
            await screen.GoAsync(place);
            await screen.QuietAsync();
            broken.AddRange(await BrokenAsync(screen, place));
        }

        Assert.True(broken.Count == 0, string.Join("\n", broken));
    }

    [BrowserTheory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task No_state_of_the_bench_breaks_a_rule(ColorScheme scheme)
    {
        await using var served = await ServedPage.StartAsync("--simulated", "--sim-bench", "small", "--clock-rate", "3");
        var screen = await browser.OpenAsync(served.Address, scheme);
        List<string> broken = [.. await BrokenAsync(screen, "no job")];
        await screen.BeginJobAsync("Wren 1", JobAtBench.Smallbench);
        broken.AddRange(await BrokenAsync(screen, "at rest"));

        // Hands-free, the state before the first clip is over when the hands are quick; step by step it lasts until a key.
        await screen.Page.GetByText("Step by step").ClickAsync();
        await screen.BeginStageAsync("Begin the sweep");
        await screen.StateAsync("Waiting");
        broken.AddRange(await BrokenAsync(screen, "Waiting"));
        await screen.ReadyForKeysAsync();
        await screen.Page.Keyboard.PressAsync("q");
        await screen.Page.WaitForSelectorAsync("#ended[data-progress=Stopped]");
        broken.AddRange(await BrokenAsync(screen, "stopped"));

        await screen.Page.GetByText("hands-free").ClickAsync();
        await screen.BeginStageAsync("Go on with the sweep");
        foreach (var activity in new[] { "Reading", "Done" })
        {
            await screen.StateAsync(activity);
            broken.AddRange(await BrokenAsync(screen, activity));
        }

        Assert.True(broken.Count == 0, string.Join("\n", broken));
    }

    [BrowserFact]
    public async Task The_rules_would_notice_a_field_without_a_label()
    {
        await using var served = await ServedPage.StartAsync(FinishedJob.CopyOf(record), []);
        var screen = await browser.OpenAsync(served.Address);
        await screen.Page.EvaluateAsync("document.querySelector('main').append(document.createElement('input'))");
        Assert.NotEmpty(await BrokenAsync(screen, "planted"));
    }

    [BrowserFact]
    public async Task A_job_begins_and_a_stage_runs_and_stops_without_a_mouse()
    {
        // So many outputs that the survey is not over before a slow screen stops it.
        await using var served = await ServedPage.StartAsync("--simulated", "--sim-bench", "demo", "--clock-rate", "10");
        var screen = await browser.OpenAsync(served.Address);
        var keys = screen.Page.Keyboard;

        await screen.ReadyForKeysAsync();
        await keys.PressAsync("Enter"); // Choose a job
        await screen.Page.WaitForSelectorAsync("#job-name");
        await screen.TabToAsync("#job-name");
        await keys.TypeAsync("Wren 2");
        await screen.TabToAsync("#job-generator");
        await keys.TypeAsync("Q"); // Quillmark; a second letter that comes late would begin another word
        await screen.TabToAsync("#begin-job");
        await keys.PressAsync("Enter");
        await screen.SeesAsync("Begin the survey");
        await screen.ReadyForKeysAsync();
        await keys.PressAsync("Enter");
        await screen.MiddleAsync(2);
        await keys.PressAsync("q");
        await screen.Page.WaitForSelectorAsync("#ended[data-progress=Stopped]");
        await keys.PressAsync("Enter"); // Go on with the survey
        await screen.MiddleAsync(4);
    }

    [BrowserFact]
    public async Task A_pedal_that_types_any_key_does_what_the_hands_mostly_want()
    {
        await using var served = await ServedPage.StartAsync("--simulated", "--sim-bench", "small", "--clock-rate", "10");
        var screen = await browser.OpenAsync(served.Address);
        await screen.BeginJobAsync("Wren 3", JobAtBench.Smallbench);
        await screen.Page.EvaluateAsync("localStorage.setItem('autosweep.pedal', 'F13')");
        await screen.ReloadAsync();
        await screen.ReadyForKeysAsync();
        await screen.Page.EvaluateAsync("dispatchEvent.call(document, new KeyboardEvent('keydown', { key: 'F13', code: 'F13', bubbles: true, cancelable: true }))");
        await screen.MiddleAsync(1);
    }

    [BrowserFact]
    public async Task Nothing_can_be_touched_that_is_smaller_than_a_finger()
    {
        await using var served = await ServedPage.StartAsync(FinishedJob.CopyOf(record), []);
        var screen = await browser.OpenAsync(served.Address, width: 800, height: 1280);
        List<string> small = [];
        foreach (var place in FinishedJob.Pages)
        {
            await screen.GoAsync(place);
            await screen.QuietAsync();
            small.AddRange((await screen.Page.EvaluateAsync<string[]>("""
                () => [...document.querySelectorAll('button, a.button, nav a, select, input:not([type=checkbox]):not([type=radio]):not([type=file]), summary')]
                  .filter(one => one.getClientRects().length > 0 && !one.classList.contains('skip'))
                  .map(one => [one, one.getBoundingClientRect()])
                  .filter(([, box]) => box.height < 47.5 || box.width < 47.5)
                  .map(([one, box]) => `${one.tagName} ${one.id || one.textContent.trim().slice(0, 30)} ${box.width.toFixed(0)} x ${box.height.toFixed(0)}`)
                """)).Select(one => $"/{place}: {one}"));
        }

        Assert.True(small.Count == 0, string.Join("\n", small));
    }
}
