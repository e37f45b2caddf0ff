using AutoSweep.Pages.Tests.Support;

namespace AutoSweep.Pages.Tests;

[Collection(DemoRecordDefinition.Name)]
public sealed class ReportPrintTests(DemoRecord record)
{
    private const string Shop = "report.html", Customer = "report-customer.html";

    // The note below the table, or the next section: a sheet that begins so has no row of the table.
    private static readonly string[] AfterTheTable = ["dB: deviation from the target", "What the figures"];

    public static TheoryData<string, string> EveryFileOnEveryPaper => new()
    {
        { Shop, "A4" }, { Shop, "Letter" }, { Customer, "A4" }, { Customer, "Letter" },
    };

    [BrowserTheory]
    [InlineData(Shop)]
    [InlineData(Customer)]
    public async Task It_opens_from_disk_and_asks_for_nothing_else(string file)
    {
        List<string> asked = [];
        List<string> complaints = [];

        var page = await record.OpenAsync(file, asked);
        page.Console += (_, message) => complaints.Add(message.Text);
        await page.ReloadAsync();

        Assert.All(asked, address => Assert.EndsWith("/" + file, address, StringComparison.Ordinal));
        Assert.Equal(2, asked.Count);
        Assert.Empty(complaints);
    }

    [BrowserTheory]
    [MemberData(nameof(EveryFileOnEveryPaper))]
    public async Task Nothing_sticks_out_in_print(string file, string paper)
    {
        var page = await record.OpenAsync(file);
        await Measuring.LayOutForAsync(page, Paper.Named(paper));

        Assert.Empty(await Measuring.OverflowingAsync(page));
        Assert.Empty(await Measuring.CutOffAsync(page));
    }

    [BrowserFact]
    public async Task The_measure_would_notice_what_sticks_out()
    {
        var page = await record.OpenAsync(Customer);
        await Measuring.LayOutForAsync(page, Paper.A4);

        await page.EvaluateAsync("document.querySelector('#outputs td').style.minWidth = '300mm'");

        Assert.NotEmpty(await Measuring.OverflowingAsync(page));
    }

    [BrowserTheory]
    [MemberData(nameof(EveryFileOnEveryPaper))]
    public async Task Every_sheet_has_the_papers_size_and_every_word_lies_between_its_margins(string file, string paper)
    {
        var (page, wanted) = (await record.OpenAsync(file), Paper.Named(paper));

        var printed = await PrintedPages.OfAsync(page, wanted, record.Folder);

        Assert.True(printed.Pages.Count > 1);
        Assert.All(printed.Pages, sheet =>
        {
            // The browser rounds a sheet to whole points.
            Assert.Equal(wanted.Width, sheet.Width, 0.5);
            Assert.Equal(wanted.Height, sheet.Height, 0.5);
            Assert.NotEmpty(sheet.Words);
            Assert.InRange(sheet.Words.Min(word => word.Left), Paper.SideMargin - 0.5, wanted.Width);
            Assert.InRange(sheet.Words.Max(word => word.Right), 0, wanted.Width - Paper.SideMargin + 0.5);
        });
    }

    [BrowserTheory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task A_table_that_goes_over_to_the_next_sheet_repeats_its_head(string paper)
    {
        var printed = await PrintedPages.OfAsync(await record.OpenAsync(Customer), Paper.Named(paper), record.Folder);

        var sheets = printed.Pages.SkipWhile(sheet => !sheet.Text.Contains("Every output", StringComparison.Ordinal))
            .TakeWhile(sheet => sheet.Text.Contains(" ± ", StringComparison.Ordinal)
                && !AfterTheTable.Any(begin => sheet.Text.StartsWith(begin, StringComparison.Ordinal))).ToList();
        Assert.True(sheets.Count > 1);
        Assert.All(sheets, sheet => Assert.Contains("new capacitor", sheet.Text, StringComparison.Ordinal));
    }

    [BrowserTheory]
    [InlineData(Shop)]
    [InlineData(Customer)]
    public async Task No_letter_is_without_a_glyph(string file) =>
        Assert.Empty(await Measuring.UnpaintedAsync(await record.OpenAsync(file)));

    [BrowserFact]
    public async Task The_measure_would_notice_a_letter_without_a_glyph()
    {
        var page = await record.OpenAsync(Customer);

        // Of the private use area (The Unicode Standard, 23.5): no text font has it.
        await page.EvaluateAsync("document.querySelector('h1').textContent += '\\uE0F7'");

        Assert.Equal(["\uE0F7"], await Measuring.UnpaintedAsync(page));
    }
}
