namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>What a person does on the page, from a new job to the record, in the words that stand on it.</summary>
internal static class JobAtBench
{
    /// <summary>The generator of the simulated bench <c>demo</c>.</summary>
    public const string Quillmark = "Quillmark 93";

    /// <summary>The generator of the simulated bench <c>small</c>.</summary>
    public const string Smallbench = "Smallbench 14";

    /// <summary>Writes down a bench without any wire: a box that is dialled by hand and a meter that is read by eye.</summary>
    public static async Task WireByHandAsync(this Screen screen)
    {
        await screen.GoAsync("wiring");
        await screen.Page.CheckAsync("#by-eye");
        await screen.Page.FillAsync("#eye-accuracy", "1");
        await screen.Page.FillAsync("#gain", "20");
        await screen.Page.CheckAsync("#by-hand");
        await screen.Page.FillAsync("#box-name", "an invented box of 1 %");
        await screen.PressAsync("Keep this wiring");
        await screen.SeesAsync("Kept. Now check the wires.");
    }

    /// <summary>Begins a job and comes to the bench with it.</summary>
    public static async Task BeginJobAsync(this Screen screen, string name, string generator)
    {
        await screen.GoAsync("jobs");
        await screen.Page.FillAsync("#job-name", name);
        var label = await screen.Page.Locator("#job-generator option", new() { HasText = generator }).First.TextContentAsync();
        await screen.Page.SelectOptionAsync("#job-generator", [new Microsoft.Playwright.SelectOptionValue { Label = label }]);
        await screen.Page.ClickAsync("#begin-job");
        await screen.SeesAsync(name);
        await screen.GoAsync("");
    }

    /// <summary>Does a stage from its button on the bench to its end; loads the page anew in the middle.</summary>
    /// <param name="screen">The screen.</param>
    /// <param name="button">What the button says.</param>
    /// <param name="middle">So many outputs are done when the page is loaded anew.</param>
    public static async Task StageAsync(this Screen screen, string button, int middle)
    {
        await screen.BeginStageAsync(button);
        await screen.MiddleAsync(middle);
        await screen.ReloadAsync();
        await screen.EndAsync();
    }

    /// <summary>Begins a stage, and waits until it goes on: until then the screen shows how the one before has ended.</summary>
    public static async Task BeginStageAsync(this Screen screen, string button)
    {
        await screen.PressAsync(button);
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("#progress"));
    }

    /// <summary>Begins the levelling from its page, hands-free, the hazard acknowledged.</summary>
    public static async Task BeginLevellingAsync(this Screen screen)
    {
        await screen.GoAsync("levels");
        await screen.Page.FillAsync("#least-gap", "0.2");
        await screen.Page.CheckAsync("#hands-free");
        await screen.Page.CheckAsync("#understood");
        await screen.Page.FillAsync("#understood-by", "simulated hands");
        await screen.Page.ClickAsync("#start-levelling");
    }

    /// <summary>Waits until so many outputs are done, or the stage is over.</summary>
    public static Task MiddleAsync(this Screen screen, int outputs) => screen.OrTellAsync(() => screen.Page.WaitForFunctionAsync(
        "n => Number(document.querySelector('#progress [data-done]')?.dataset.done ?? -1) >= n || document.querySelector('#ended') !== null", outputs));

    /// <summary>Waits for the end of the work and holds that it is done.</summary>
    public static async Task EndAsync(this Screen screen)
    {
        await screen.OrTellAsync(() => screen.Page.WaitForSelectorAsync("#ended"));
        Assert.True(await screen.Page.GetAttributeAsync("#ended", "data-progress") == "Done", await screen.Page.InnerTextAsync("main"));
    }

    /// <summary>Waits until so many parts are taken in and the meter has beeped for the last one; nobody ends a bag before.</summary>
    public static Task TakenInAsync(this Screen screen, int parts) => screen.OrTellAsync(() => screen.Page.WaitForFunctionAsync(
        "n => parseInt(document.querySelector('#count')?.textContent ?? '0') === n && document.querySelector('#state[data-activity=Done]') !== null", parts));
}
