using System.Text.Json;
using AutoSweep.Pages.Tests.Support;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Pages.Tests;

[Collection(DemoRecordDefinition.Name)]
public sealed class ReportTableTests(DemoRecord record)
{
    private const string Cells =
        """
        section => JSON.stringify(Object.fromEntries([...document.querySelectorAll('#' + section + ' tr[data-output]')].map(row =>
            [row.dataset.output,
            Object.fromEntries([...row.querySelectorAll('td[data-figure]')].map(cell => [cell.dataset.figure, cell.textContent.trim()]))])))
        """;

    [BrowserFact]
    public async Task The_demos_tables_show_what_its_journal_folds_to_for_every_output()
    {
        var state = record.Job.State;
        var page = await record.OpenAsync("report.html");
        var levels = await TableAsync(page, "levels");
        var capacitors = await TableAsync(page, "capacitors");

        Assert.Equal(state.Profile!.Outputs.Select(output => output.Number), levels.Keys.Order());
        Assert.Equal(state.Swept.Keys, capacitors.Keys.Order());
        foreach (var (output, row) in levels)
        {
            PrintedTable.Shows(state.Surveyed.GetValueOrDefault(output)?.Millivolts, row["found_mv"]);
            PrintedTable.Shows(state.Checked.GetValueOrDefault(output)?.Millivolts, row["recapped_mv"]);
            PrintedTable.Shows(state.AsLeft.GetValueOrDefault(output)?.Millivolts, row["left_mv"]);
        }

        foreach (var (output, row) in capacitors)
        {
            PrintedTable.Shows(SweptResult.From(state, state.Swept[output]).PeakAtNominalMainsPicofarads / 1000.0, row["wanted"]);
            PrintedTable.Shows(state.Fitted.GetValueOrDefault(output)?.MeasuredPicofarads / 1000.0, row["fitted"]);
            PrintedTable.Shows(state.Checked.GetValueOrDefault(output)?.PredictedMillivolts, row["predicted_mv"]);
            PrintedTable.Shows(state.Checked.GetValueOrDefault(output)?.Millivolts, row["checked_mv"]);
        }
    }

    private static async Task<Dictionary<int, Dictionary<string, string>>> TableAsync(Microsoft.Playwright.IPage page, string section) =>
        JsonSerializer.Deserialize<Dictionary<int, Dictionary<string, string>>>(await page.EvaluateAsync<string>(Cells, section))!;
}
