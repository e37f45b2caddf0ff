using System.Text.Encodings.Web;
using System.Text.Unicode;
using AutoSweep.Worker.Reports.Pages;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Worker.Reports;

/// <summary>A record as one HTML text that needs nothing else: no network, no script, no file beside it.</summary>
public static class ReportPage
{
    /// <summary>Writes it.</summary>
    /// <param name="report">What is printed.</param>
    /// <param name="charts">Its charts.</param>
    /// <param name="length">For whom.</param>
    public static async Task<string> HtmlAsync(JobReport report, ReportCharts charts, ReportLength length)
    {
        // Every text is encoded by the renderer; letters of all scripts stay letters, so that the file can be read.
        await using var services = new ServiceCollection()
            .AddSingleton<ILoggerFactory>(NullLoggerFactory.Instance)
            .AddSingleton(HtmlEncoder.Create(UnicodeRanges.All))
            .BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        var parameters = ParameterView.FromDictionary(new Dictionary<string, object?>
        {
            [nameof(ReportDocument.Report)] = report,
            [nameof(ReportDocument.Charts)] = charts,
            [nameof(ReportDocument.Length)] = length,
        });
        return await renderer.Dispatcher.InvokeAsync(async () => (await renderer.RenderComponentAsync<ReportDocument>(parameters)).ToHtmlString());
    }
}
