using AutoSweep.Pages.Tests.Support;
using Microsoft.Playwright;

namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>A browser for the bench page's tests.</summary>
public sealed class PageBrowser : IAsyncLifetime
{
    /// <summary>The longest that anything on the page may be waited for, in milliseconds: the longest stage of the demo takes a third of it.</summary>
    public const float Longest = 60_000;

    private IPlaywright? _playwright;

    /// <summary>The browser.</summary>
    internal IBrowser Browser { get; private set; } = null!;

    public async Task InitializeAsync()
    {
        if (Tools.Chromium is null)
            return;
        _playwright = await Playwright.CreateAsync();
        Browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Tools.Chromium, Args = DemoRecord.Flags });
    }

    /// <summary>A screen: a window of its own, with its own cookies.</summary>
    internal async Task<Screen> OpenAsync(Uri address, ColorScheme scheme = ColorScheme.Light, int width = 1280, int height = 800)
    {
        var context = await Browser.NewContextAsync(new() { ColorScheme = scheme, ViewportSize = new() { Width = width, Height = height }, ReducedMotion = ReducedMotion.Reduce });
        context.SetDefaultTimeout(Longest);
        var page = await context.NewPageAsync();
        var screen = new Screen(page, address);
        await screen.GoAsync("");
        return screen;
    }

    public async Task DisposeAsync()
    {
        if (_playwright is null)
            return;
        await Browser.DisposeAsync();
        _playwright.Dispose();
    }
}
