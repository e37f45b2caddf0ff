using Microsoft.Playwright;

namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>Takes pictures of pages and collects what is wrong with their layout.</summary>
/// <remarks>The pictures are kept where AUTOSWEEP_PICTURES names a folder.</remarks>
internal sealed class PictureBook : IDisposable
{
    private static readonly string? Kept = Environment.GetEnvironmentVariable("AUTOSWEEP_PICTURES");

    private readonly string _folder = string.IsNullOrEmpty(Kept)
        ? Directory.CreateTempSubdirectory("autosweep-pictures-").FullName
        : Directory.CreateDirectory(Kept).FullName;

    /// <summary>What is wrong, with the picture that shows it.</summary>
    public List<string> Wrong { get; } = [];

    /// <summary>Pictures taken.</summary>
    public int Taken { get; private set; }

    /// <summary>Takes the page as it stands in each size.</summary>
    /// <param name="screen">The screen; it keeps the last size.</param>
    /// <param name="name">The picture's name, without its size.</param>
    /// <param name="sizes">The sizes.</param>
    public async Task TakeAsync(Screen screen, string name, params IEnumerable<DisplaySize> sizes)
    {
        foreach (var size in sizes)
        {
            if (screen.Page.ViewportSize is not { } now || now.Width != size.Width || now.Height != size.Height)
                await screen.Page.SetViewportSizeAsync(size.Width, size.Height);
            var title = $"{name}-{size.Name}";
            Wrong.AddRange((await Layout.WrongAsync(screen.Page)).Select(wrong => $"{title}: {wrong}"));
            await screen.Page.ScreenshotAsync(new() { Path = Path.Combine(_folder, title + ".png"), FullPage = true });
            Taken++;
        }
    }

    /// <summary>Takes what is seen without scrolling: a picture for the documentation.</summary>
    public async Task TakeFirstSightAsync(Screen screen, string name, DisplaySize size)
    {
        await screen.Page.SetViewportSizeAsync(size.Width, size.Height);
        await screen.Page.ScreenshotAsync(new() { Path = Path.Combine(_folder, name + ".png") });
    }

    /// <summary>Waits for a state of the page, an expression of JavaScript, and holds that these can then be seen without scrolling.</summary>
    public Task SeenAtOnceAsync(Screen screen, string name, string isSo, params IEnumerable<string> selectors) => screen.OrTellAsync(async () =>
        Wrong.AddRange((await Layout.BelowAsync(screen.Page, isSo, selectors)).Select(wrong => $"{name}: {wrong}")));

    /// <summary>Holds that nothing was wrong and that the browser complained of nothing.</summary>
    public void Hold(params IEnumerable<Screen> screens)
    {
        Wrong.AddRange(screens.SelectMany(screen => screen.Complaints).Select(complaint => "the browser: " + complaint));
        Assert.True(Wrong.Count == 0, string.Join('\n', Wrong.Distinct()));
    }

    public void Dispose()
    {
        if (string.IsNullOrEmpty(Kept))
            Directory.Delete(_folder, recursive: true);
    }
}
