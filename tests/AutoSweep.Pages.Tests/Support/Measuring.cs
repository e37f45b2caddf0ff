using Microsoft.Playwright;

namespace AutoSweep.Pages.Tests.Support;

/// <summary>What a browser says of the page that it has laid out.</summary>
internal static class Measuring
{
    // An element sticks out where its own content is wider than it, or where it reaches beyond the text's width.
    private const string Overflowing =
        """
        width => [...document.body.querySelectorAll('*')].filter(one => !one.closest('svg')).filter(one =>
            one.getBoundingClientRect().right > width + 0.5 || one.getBoundingClientRect().left < -0.5
            || (getComputedStyle(one).display !== 'inline' && one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0))
            .map(one => one.tagName + ': ' + one.textContent.trim().slice(0, 60))
        """;

    // In a chart: text that leaves the picture.
    private const string CutOff =
        """
        () => [...document.querySelectorAll('svg')].flatMap(chart => [...chart.querySelectorAll('text')].filter(text => {
            const [inner, outer] = [text.getBoundingClientRect(), chart.getBoundingClientRect()];
            return inner.left < outer.left - 0.5 || inner.right > outer.right + 0.5 || inner.top < outer.top - 0.5 || inner.bottom > outer.bottom + 0.5;
        }).map(text => text.textContent))
        """;

    // A letter that no font has is drawn as the same box as a code that can never have one (U+10FFFF, a noncharacter of the Unicode Standard, 23.7).
    private const string Unpainted =
        """
        () => {
            const canvas = Object.assign(document.createElement('canvas'), { width: 40, height: 40 });
            const pen = canvas.getContext('2d', { willReadFrequently: true });
            const painted = (letter, font) => {
                pen.clearRect(0, 0, 40, 40);
                pen.font = '20px ' + font;
                pen.fillText(letter, 6, 28);
                return pen.getImageData(0, 0, 40, 40).data.join();
            };
            const missing = new Set();
            const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
            for (let node = walker.nextNode(); node; node = walker.nextNode()) {
                const font = getComputedStyle(node.parentElement).fontFamily;
                for (const letter of node.textContent)
                    if (letter.trim() && painted(letter, font) === painted('\u{10FFFF}', font))
                        missing.add(letter);
            }
            return [...missing];
        }
        """;

    /// <summary>Lays the page out as for a paper: print style, as wide as the text between the margins.</summary>
    public static async Task LayOutForAsync(IPage page, Paper paper)
    {
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await page.SetViewportSizeAsync((int)((paper.Width - (2 * Paper.SideMargin)) / Paper.PixelMillimetres), 1000);
    }

    /// <summary>The elements that are wider than the text, with the beginning of their text.</summary>
    public static async Task<string[]> OverflowingAsync(IPage page) =>
        await page.EvaluateAsync<string[]>(Overflowing, page.ViewportSize!.Width);

    /// <summary>The chart labels that leave their chart.</summary>
    public static async Task<string[]> CutOffAsync(IPage page) => await page.EvaluateAsync<string[]>(CutOff);

    /// <summary>The letters of the page for which no font has a glyph.</summary>
    public static async Task<string[]> UnpaintedAsync(IPage page) => await page.EvaluateAsync<string[]>(Unpainted);
}
