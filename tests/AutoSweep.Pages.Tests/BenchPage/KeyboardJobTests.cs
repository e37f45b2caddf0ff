using AutoSweep.Pages.Tests.BenchPage.Support;
using AutoSweep.Pages.Tests.Support;
using AutoSweep.Worker.Job;

namespace AutoSweep.Pages.Tests.BenchPage;

/// <summary>A job from its name to its record with no hand on a mouse.</summary>
public sealed class KeyboardJobTests(PageBrowser browser) : IClassFixture<PageBrowser>
{
    private const string Name = "Siskin 5";

    [BrowserFact]
    public async Task From_a_new_job_to_the_record_by_keyboard_alone()
    {
        await using var served = await ServedPage.StartAsync("--simulated", "--sim-bench", "small", "--clock-rate", "20");
        var screen = await browser.OpenAsync(served.Address);

        await PressAsync(screen, "Enter"); // Choose a job
        await screen.TabToAsync("#job-name");
        await screen.Page.Keyboard.TypeAsync(Name);
        await screen.TabToAsync("#job-generator");
        await screen.Page.Keyboard.TypeAsync("S"); // Smallbench; a second letter that comes late would begin another word
        await screen.TabToAsync("#begin-job");
        await screen.Page.Keyboard.PressAsync("Enter");
        await StageAsync(screen, "Begin the survey", "Enter");
        await StageAsync(screen, "Begin the sweep", "Enter");
        await TakeInAndFitAsync(screen);
        await GoAsync(screen, "Bench");
        await StageAsync(screen, "Begin the check", "Enter");
        await PressAsync(screen, "9"); // See the record
        await screen.TabToAsync("#write");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.SeesAsync("The record is written");

        var state = JobReading.Read(Path.Combine(served.Data, "jobs", Name)).State;
        Assert.Equal((14, 6), (state.Surveyed.Count, state.Swept.Count));
        Assert.NotEmpty(state.Fitted);
        Assert.Equal(state.Fitted.Keys, state.Checked.Keys);
    }

    private static async Task StageAsync(Screen screen, string button, string key)
    {
        await screen.SeesAsync(button);
        await PressAsync(screen, key);
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("#progress"));
        await screen.EndAsync();
    }

    // The dozen parts of the small bench do not suffice for every output; what they suffice for is fitted.
    private static async Task TakeInAndFitAsync(Screen screen)
    {
        await GoAsync(screen, "Stock");
        await PressAsync(screen, "i");
        await screen.TakenInAsync(12);
        await PressAsync(screen, "s");
        await screen.SeesAsync("12 parts taken in.");
        await GoAsync(screen, "Parts");
        await PressAsync(screen, "m");
        await screen.SeesAsync("Matched; the parts are reserved.");
        await PressAsync(screen, "f");
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("#solder"));
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("[data-key=f]"));
    }

    private static async Task GoAsync(Screen screen, string page)
    {
        await screen.TabToAsync($"nav a:text-is('{page}')");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync($"nav a.active:text-is('{page}')"));
        await screen.AliveAsync();
    }

    private static async Task PressAsync(Screen screen, string key)
    {
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync($"[data-key='{key}']:not([disabled])"));
        await screen.Page.Keyboard.PressAsync(key);
    }
}
