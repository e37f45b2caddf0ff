using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Journal;
using AutoSweep.Pages.Tests.BenchPage.Support;
using AutoSweep.Pages.Tests.Support;
using Microsoft.Playwright;

namespace AutoSweep.Pages.Tests.BenchPage;

/// <summary>A picture of every page in three sizes, taken by one command, and what can be held of them without an eye.</summary>
[Collection(DemoRecordDefinition.Name)]
public sealed class PicturesTests(DemoRecord record, PageBrowser browser) : IClassFixture<PageBrowser>
{
    // Slow enough that a curve has four readings and no beep yet while its picture is taken.
    private const double Rate = 6;

    [BrowserFact]
    public async Task Every_page_at_rest_fits_every_screen()
    {
        using var book = new PictureBook();
        await using var served = await ServedPage.StartAsync(FinishedJob.CopyOf(record), ["--simulated"]);
        var screen = await browser.OpenAsync(served.Address);
        foreach (var place in FinishedJob.Pages)
        {
            await screen.GoAsync(place);
            await screen.QuietAsync();
            // The first page has the hint that sounds are off; the others are as after a first touch.
            if (place != "")
                await screen.Page.Keyboard.PressAsync("Shift");
            await book.TakeAsync(screen, place == "" ? "bench-rest" : place, DisplaySize.All);
        }

        book.Hold(screen);
        Assert.Equal(3 * FinishedJob.Pages.Count, book.Taken);
    }

    [BrowserFact]
    public async Task A_sweep_fits_every_screen_by_day_and_by_night()
    {
        using var book = new PictureBook();
        await using var bench = await ServedBench.StartAsync("demo", "sweep", Rate);
        await using var served = await StartAsync(BenchFolder.Wired(BenchFolder.Until<OutputSwept>(record, 12), bench));
        var screen = await browser.OpenAsync(served.Address);
        await book.TakeAsync(screen, "bench-broken-off", DisplaySize.All);
        await screen.PressAsync("Go on with the sweep");
        await screen.MiddleAsync(13);
        foreach (var (scheme, size) in Shades().Reverse())
        {
            await screen.Page.EmulateMediaAsync(new() { ColorScheme = scheme });
            await screen.Page.SetViewportSizeAsync(size.Width, size.Height);
            await book.SeenAtOnceAsync(screen, $"sweep on {size.Name}", MidCurve, AtOnce(size));
            if (scheme == ColorScheme.Light && size == DisplaySize.Landscape)
                await book.TakeFirstSightAsync(screen, "page-sweep", size);
            await book.TakeAsync(screen, "bench-sweep-" + scheme.ToString().ToLowerInvariant(), size);
        }

        var watcher = await browser.OpenAsync(served.Address);
        await MidCurveAsync(watcher);
        await book.TakeAsync(watcher, "bench-watching", DisplaySize.All);
        await watcher.PressAsync("Ask for the controls");
        await screen.Page.WaitForSelectorAsync("#controls[data-controls=asked]");
        await book.TakeAsync(screen, "bench-asked", DisplaySize.All);
        book.Hold(screen, watcher);
    }

    [BrowserFact]
    public async Task The_hunt_for_the_next_output_and_the_magnets_fit_every_screen()
    {
        using var book = new PictureBook();
        await using var bench = await ServedBench.StartAsync("demo", "level", Rate);
        await using var served = await StartAsync(BenchFolder.Wired(BenchFolder.Until<StageEnded>(record, 3), bench));
        var screen = await browser.OpenAsync(served.Address);
        await screen.BeginLevellingAsync();
        await screen.GoAsync("");
        await screen.StateAsync("Waiting");
        await book.TakeAsync(screen, "bench-waiting", DisplaySize.All);
        await AtMagnetAsync(screen);
        await screen.Page.Keyboard.PressAsync("Shift");
        await book.TakeFirstSightAsync(screen, "page-magnet", DisplaySize.Portrait);
        await book.TakeAsync(screen, "bench-levelling", DisplaySize.All);
        book.Hold(screen);
    }

    [BrowserFact]
    public async Task Parts_being_taken_in_fit_every_screen()
    {
        using var book = new PictureBook();
        await using var bench = await ServedBench.StartAsync("demo", "parts", Rate);
        await using var served = await StartAsync(BenchFolder.WithoutStock(BenchFolder.Wired(BenchFolder.Until<StageEnded>(record, 2), bench)));
        var screen = await browser.OpenAsync(served.Address);
        await screen.GoAsync("stock");
        await screen.PressAsync("Read them one after the other");
        await screen.OrTellAsync(() => screen.Page.WaitForFunctionAsync("() => Number(document.querySelector('#last-old')?.dataset.output ?? 0) >= 49"));
        await book.TakeAsync(screen, "stock-old-set", DisplaySize.All);
        await screen.PressAsync("Stop here");
        await screen.PressAsync("Begin");
        await screen.Page.WaitForFunctionAsync("() => parseInt(document.querySelector('#count')?.textContent ?? '0') >= 2");
        await book.TakeFirstSightAsync(screen, "page-intake", DisplaySize.Landscape);
        await book.TakeAsync(screen, "stock-intake", DisplaySize.All);
        book.Hold(screen);
    }

    [BrowserFact]
    public async Task The_questions_of_a_bench_by_hand_fit_every_screen()
    {
        using var book = new PictureBook();
        await using var served = await ServedPage.StartAsync(BenchFolder.ByHand(BenchFolder.Until<OutputSwept>(record, 20)), []);
        var screen = await browser.OpenAsync(served.Address);
        await screen.PressAsync("Go on with the sweep");
        await screen.PressAsync("It is clipped");
        await screen.Page.WaitForSelectorAsync("#question[data-kind=Dials]");
        await book.TakeAsync(screen, "bench-dials", DisplaySize.All);
        await book.TakeFirstSightAsync(screen, "page-by-hand", DisplaySize.Landscape);
        await screen.PressAsync("It stands so");
        await screen.Page.WaitForSelectorAsync("#question[data-kind=Level]");
        await screen.Page.FillAsync("#answer", "twelve");
        await screen.Page.Keyboard.PressAsync("Enter");
        await screen.Page.WaitForSelectorAsync("#reply .complaint");
        await book.TakeAsync(screen, "bench-level-question", DisplaySize.All);
        book.Hold(screen);
    }

    [BrowserFact]
    public async Task The_check_would_notice_text_that_sticks_out_and_text_that_is_cut_off()
    {
        await using var served = await ServedPage.StartAsync();
        var screen = await browser.OpenAsync(served.Address, width: 390, height: 844);
        Assert.Empty(await Layout.WrongAsync(screen.Page));
        await screen.Page.EvaluateAsync("""
            () => {
              const word = document.createElement('p');
              word.textContent = 'pico'.repeat(60);
              document.querySelector('main').append(word);
              const cut = word.cloneNode(true);
              cut.className = 'map';
              Object.assign(cut.style, { overflow: 'hidden', width: '5rem' });
              document.querySelector('main').append(cut);
            }
            """);
        var wrong = string.Join('\n', await Layout.WrongAsync(screen.Page));
        Assert.Contains("px wide", wrong, StringComparison.Ordinal);
        Assert.Contains("cut off: p", wrong, StringComparison.Ordinal);
    }

    private static Task<ServedPage> StartAsync(string data) => ServedPage.StartAsync(data, ["--clock-rate", FormattableString.Invariant($"{Rate}")]);

    private static IEnumerable<(ColorScheme Scheme, DisplaySize Size)> Shades() =>
        from scheme in new[] { ColorScheme.Light, ColorScheme.Dark } from size in DisplaySize.All select (scheme, size);

    // Between the fourth reading and the result.
    private const string MidCurve =
        "document.querySelectorAll('circle[data-reading]').length === 4 && document.querySelector('#state[data-activity=Reading]') !== null";

    private static Task MidCurveAsync(Screen screen) => screen.OrTellAsync(() => screen.Page.WaitForFunctionAsync("() => " + MidCurve));

    // On a lying tablet the map too; on a phone there is room for the state and what can be pressed.
    private static string[] AtOnce(DisplaySize size) =>
        size == DisplaySize.Phone ? ["#state", ".keys"]
        : size == DisplaySize.Portrait ? ["#state", ".keys", "#fit", ".readings", ".neighbours"]
        : ["#state", ".keys", "#fit", ".readings", ".neighbours", ".map"];

    // At an output without a filter: the bench has just been made and its old capacitors still hang on the others, which the job says are fitted.
    private static Task AtMagnetAsync(Screen screen) => screen.OrTellAsync(() => screen.Page.WaitForFunctionAsync(
        "() => Number(document.querySelector('#state[data-activity=Moving]')?.dataset.output ?? 99) < 47"));
}
