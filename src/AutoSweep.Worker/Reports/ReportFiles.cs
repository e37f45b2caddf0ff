using System.Text.Json;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Reports;

/// <summary>The record's files in a job folder, each replaced whole.</summary>
/// <param name="Shop">The full version, for the shop.</param>
/// <param name="Customer">The short version, for the customer.</param>
/// <param name="Csv">One row an output.</param>
/// <param name="Json">Everything, for other programs.</param>
public sealed record ReportFiles(string Shop, string Customer, string Csv, string Json)
{
    private static readonly JsonSerializerOptions Options = new(JournalLine.Json) { WriteIndented = true };

    /// <summary>Where the files of a job are.</summary>
    public static ReportFiles In(string folder) => new(
        Path.Combine(folder, "report.html"), Path.Combine(folder, "report-customer.html"), Path.Combine(folder, "report.csv"),
        Path.Combine(folder, "report.json"));

    /// <summary>Makes a job's record and writes it into its folder.</summary>
    /// <exception cref="Core.BenchFaultException">The folder cannot be written.</exception>
    public static async Task<ReportFiles> WriteAsync(ReportSource source)
    {
        var (report, charts, files) = (JobReport.Of(source), ReportCharts.Of(source.Job.State), In(source.Job.Folder));
        ResultFiles.Replace(files.Shop, await ReportPage.HtmlAsync(report, charts, ReportLength.Shop));
        ResultFiles.Replace(files.Customer, await ReportPage.HtmlAsync(report, charts, ReportLength.Customer));
        ResultFiles.Replace(files.Csv, ReportCsv.Text(report));
        ResultFiles.Replace(files.Json, JsonSerializer.Serialize(report, Options) + "\n");
        return files;
    }
}
