using System.Globalization;
using System.Text.RegularExpressions;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Reports;

public sealed class ReportPageTests
{
    private const string Script = "<script>alert('x')</script>";

    [Theory]
    [InlineData(ReportLength.Shop)]
    [InlineData(ReportLength.Customer)]
    public async Task Text_from_outside_is_encoded_wherever_it_stands(ReportLength length)
    {
        using var job = new RecappedJob("job <img src=x>");
        var shop = new ShopSettings { Name = Script, Address = [Script], Technician = Script, Phone = Script, Note = Script,
            Instruments = [new() { Identity = "SN-17", By = Script, Accuracy = Script }] };

        var html = await Html(job.Source with { Shop = shop, Customer = Script, Instrument = Script }, length);

        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;script&gt;alert(", html, StringComparison.Ordinal);
        Assert.Contains("job &lt;img src=x&gt;", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ReportLength.Shop)]
    [InlineData(ReportLength.Customer)]
    public async Task The_file_names_nothing_outside_itself(ReportLength length)
    {
        using var job = new RecappedJob();

        var html = await Html(job.Source, length);

        // Names of XML vocabularies are not addresses.
        var text = Regex.Replace(html, " xmlns(:\\w+)?=\"[^\"]*\"", "");
        Assert.DoesNotMatch("(?i)https?:|//[a-z0-9]|\\bsrc=|@import|url\\((?!#)|href=\"(?!#)", text);
    }

    [Theory]
    [InlineData(ReportLength.Shop)]
    [InlineData(ReportLength.Customer)]
    public async Task A_job_that_has_only_been_opened_makes_a_record_that_says_so(ReportLength length)
    {
        using var job = new RecappedJob(whole: false);

        var html = await Html(job.Source with { Stock = null }, length);

        Assert.Contains("Survey as found: not begun.", html, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_settings_the_shop_is_a_line_to_fill_in_by_hand()
    {
        using var job = new RecappedJob();

        var html = await Html(job.Source, ReportLength.Customer);

        Assert.Contains("<span class=\"soft\">Shop</span> <span class=\"fill\"></span>", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_invented_shop_and_generator_are_marked_as_invented()
    {
        using var job = new RecappedJob();

        var html = await Html(job.Source with { Shop = new() { Name = "Some Bench", Invented = true } }, ReportLength.Customer);

        Assert.Contains("Invented shop, for demonstration", html, StringComparison.Ordinal);
        Assert.Contains("Invented generator, for demonstration", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public async Task The_record_is_the_same_in_every_culture(string culture)
    {
        using var job = new RecappedJob();
        var expected = await Html(job.Source, ReportLength.Shop);
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new(culture);
        try
        {
            Assert.Equal(expected, await Html(job.Source, ReportLength.Shop));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static Task<string> Html(ReportSource source, ReportLength length) =>
        ReportPage.HtmlAsync(JobReport.Of(source), ReportCharts.Of(source.Job.State), length);
}
