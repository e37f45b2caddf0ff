using Microsoft.Playwright;

namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>One open screen of the bench page, driven as a person drives it.</summary>
internal sealed class Screen
{
    private readonly Uri _address;

    public Screen(IPage page, Uri address)
    {
        (Page, _address) = (page, address);
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
                Complaints.Add(message.Text);
        };
        page.Request += (_, request) => Asked.Add(request.Url);
    }

    /// <summary>The browser's page.</summary>
    public IPage Page { get; }

    /// <summary>What the browser complained of.</summary>
    public List<string> Complaints { get; } = [];

    /// <summary>Every address that was asked for.</summary>
    public List<string> Asked { get; } = [];

    /// <summary>Goes to a page by its address and waits until it is alive.</summary>
    public async Task GoAsync(string place)
    {
        await Page.GotoAsync(new Uri(_address, place).AbsoluteUri);
        await AliveAsync();
    }

    /// <summary>Loads the page anew, as an impatient person does.</summary>
    public async Task ReloadAsync()
    {
        await Page.ReloadAsync();
        await AliveAsync();
    }

    /// <summary>Waits until the page answers clicks: only then does it know whether it holds the controls.</summary>
    public Task AliveAsync() => OrTellAsync(() => Page.WaitForSelectorAsync("#controls[data-controls]"));

    /// <summary>Waits until nothing on the page says that it is still being read.</summary>
    public Task QuietAsync() => OrTellAsync(() => Page.WaitForFunctionAsync("() => !document.querySelector('main').innerText.includes('…')"));

    /// <summary>Goes to a control with the Tab key. With a limit: one that cannot be reached must end the test.</summary>
    public async Task TabToAsync(string selector)
    {
        await OrTellAsync(() => Page.WaitForSelectorAsync(selector));
        var wanted = Page.Locator(selector).First;
        for (var presses = 0; presses < 80; presses++)
        {
            if (await wanted.EvaluateAsync<bool>("one => one === document.activeElement"))
                return;
            await Page.Keyboard.PressAsync("Tab");
        }

        Assert.Fail($"{selector} was not reached in 80 presses of Tab.");
    }

    /// <summary>Waits until the main button can be pressed: a screen knows a moment before its buttons do that it holds the controls.</summary>
    public Task ReadyForKeysAsync() => OrTellAsync(() => Page.WaitForSelectorAsync("[data-pedal]:not([disabled])"));

    /// <summary>Presses the button that has this text.</summary>
    public Task PressAsync(string text) => OrTellAsync(() => Page.GetByRole(AriaRole.Button, new() { Name = text }).First.ClickAsync());

    /// <summary>Waits until the big state is one of these.</summary>
    public Task StateAsync(params string[] activities) =>
        OrTellAsync(() => Page.WaitForSelectorAsync(string.Join(',', activities.Select(activity => $"#state[data-activity={activity}]"))));

    /// <summary>Waits until text stands on the page.</summary>
    public Task SeesAsync(string text) => OrTellAsync(() => Page.GetByText(text).First.WaitForAsync());

    /// <summary>Does something; when it fails, what stood on the page is told.</summary>
    public async Task OrTellAsync(Func<Task> act)
    {
        try
        {
            await act();
        }
        catch (Exception fault) when (fault is TimeoutException or PlaywrightException)
        {
            throw new InvalidOperationException(
                $"{fault.Message}\n--- {Page.Url} showed:\n{await Page.InnerTextAsync("body")}\n--- and the browser complained:\n{string.Join('\n', Complaints)}", fault);
        }
    }
}
