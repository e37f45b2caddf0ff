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
    public Task AliveAsync() => Page.WaitForSelectorAsync("#controls[data-controls]");

    /// <summary>Presses the button that has this text.</summary>
    public Task PressAsync(string text) => Page.GetByRole(AriaRole.Button, new() { Name = text }).First.ClickAsync();

    /// <summary>Waits until the big state is one of these.</summary>
    public Task<IElementHandle?> StateAsync(params string[] activities) =>
        Page.WaitForSelectorAsync(string.Join(',', activities.Select(activity => $"#state[data-activity={activity}]")));

    /// <summary>Waits until text stands on the page.</summary>
    public Task SeesAsync(string text) => Page.GetByText(text).First.WaitForAsync();
}
