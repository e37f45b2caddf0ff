using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace AutoSweep.Pages.Tests.Support;

/// <summary>A record as the browser prints it, read back by poppler's pdftotext: a program that shares nothing with the browser.</summary>
internal sealed partial class PrintedPages
{
    private PrintedPages(IReadOnlyList<PrintedPaper> pages) => Pages = pages;

    /// <summary>The sheets.</summary>
    public IReadOnlyList<PrintedPaper> Pages { get; }

    /// <summary>Prints a page.</summary>
    public static async Task<PrintedPages> OfAsync(IPage page, Paper paper, string folder)
    {
        var file = Path.Combine(folder, $"printed-{paper.Name}.pdf");
        await page.PdfAsync(new() { Path = file, Format = paper.Name, PreferCSSPageSize = false });
        var layout = await TextAsync("-bbox", file, "-");
        return new([.. Sheet().Matches(layout).Select(Read)]);
    }

    private static PrintedPaper Read(Match sheet) => new(
        Number(sheet.Groups[1]), Number(sheet.Groups[2]),
        [.. Word().Matches(sheet.Groups[3].Value).Select(word => new PrintedWord(Number(word.Groups[1]), Number(word.Groups[3]), word.Groups[5].Value))]);

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture) * Paper.PointMillimetres;

    private static async Task<string> TextAsync(params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(Tools.Find("pdftotext")!, arguments) { RedirectStandardOutput = true })!;
        var text = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return text;
    }

    [GeneratedRegex("<page width=\"([0-9.]+)\" height=\"([0-9.]+)\">(.*?)</page>", RegexOptions.Singleline)]
    private static partial Regex Sheet();

    [GeneratedRegex("<word xMin=\"([-0-9.]+)\" yMin=\"([-0-9.]+)\" xMax=\"([-0-9.]+)\" yMax=\"([-0-9.]+)\">([^<]*)</word>")]
    private static partial Regex Word();
}
