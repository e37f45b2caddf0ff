using System.Globalization;
using System.Text.Json;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Reports;

public sealed class JobReportTests : IDisposable
{
    private readonly RecappedJob _job = new();

    [Fact]
    public async Task The_shops_tables_show_what_the_journal_folds_to_for_every_output()
    {
        var state = _job.Reading.State;
        var html = await Html(ReportLength.Shop);
        var (levels, capacitors) = (PrintedTable.Read(html, "levels"), PrintedTable.Read(html, "capacitors"));

        Assert.Equal(state.Profile!.Outputs.Select(output => output.Number), levels.Keys.Order());
        Assert.Equal(state.Swept.Keys, capacitors.Keys.Order());
        foreach (var (output, row) in levels)
        {
            PrintedTable.Shows(state.Surveyed[output].Millivolts, row["found_mv"]);
            PrintedTable.Shows(state.Checked.GetValueOrDefault(output)?.Millivolts, row["recapped_mv"]);
            PrintedTable.Shows(state.AsLeft.GetValueOrDefault(output)?.Millivolts, row["left_mv"]);
            PrintedTable.Shows(Off(state, CurveStand.AsFound, output), row["found_db"]);
            PrintedTable.Shows(Off(state, CurveStand.AsLeft, output), row["left_db"]);
        }

        foreach (var (output, row) in capacitors)
        {
            PrintedTable.Shows(SweptResult.From(state, state.Swept[output]).PeakAtNominalMainsPicofarads / 1000.0, row["wanted"]);
            PrintedTable.Shows(state.Fitted[output].MeasuredPicofarads / 1000.0, row["fitted"]);
            PrintedTable.Shows(state.Fitted[output].LossDecibels, row["loss_db"]);
            PrintedTable.Shows(state.Checked[output].PredictedMillivolts, row["predicted_mv"]);
            PrintedTable.Shows(state.Checked[output].Millivolts, row["checked_mv"]);
            PrintedTable.Shows(state.Checked[output].DifferenceDecibels, row["difference_db"]);
            Assert.Equal(string.Join(' ', state.Fitted[output].Parts), row["parts"]);
        }
    }

    [Fact]
    public async Task The_customers_table_shows_the_same_figures()
    {
        var state = _job.Reading.State;

        var rows = PrintedTable.Read(await Html(ReportLength.Customer), "outputs");

        Assert.Equal(state.Profile!.Outputs.Count, rows.Count);
        foreach (var (output, row) in rows)
        {
            PrintedTable.Shows(state.Surveyed[output].Millivolts, row["found_mv"]);
            PrintedTable.Shows(state.AsLeft.GetValueOrDefault(output)?.Millivolts, row["now_mv"]);
            PrintedTable.Shows(state.Fitted.GetValueOrDefault(output)?.MeasuredPicofarads / 1000.0, row["fitted"]);
        }
    }

    [Fact]
    public void Csv_and_json_hold_the_same_figures_unrounded()
    {
        var state = _job.Reading.State;
        var report = JobReport.Of(_job.Source);
        var lines = ReportCsv.Text(report).ReplaceLineEndings("\n").TrimEnd().Split('\n');
        var names = lines[0].Split(',');
        using var json = JsonDocument.Parse(JsonSerializer.Serialize(report, JournalLine.Json));

        Assert.Equal(state.Profile!.Outputs.Count, lines.Length - 1);
        foreach (var (place, line) in lines.Skip(1).Index())
        {
            var cells = names.Zip(line.Split(',')).ToDictionary(pair => pair.First, pair => pair.Second);
            var written = json.RootElement.GetProperty("outputs")[place];
            var output = int.Parse(cells["output"], CultureInfo.InvariantCulture);
            Assert.Equal(output, written.GetProperty("output").GetInt32());
            Assert.Equal(state.Surveyed[output].Millivolts, written.GetProperty("asFound").GetProperty("millivolts").GetDouble());
            Assert.Equal(state.Surveyed[output].Millivolts, double.Parse(cells["found_mv"], CultureInfo.InvariantCulture), 5);
            Assert.Equal(state.Fitted.GetValueOrDefault(output)?.MeasuredPicofarads.ToString(CultureInfo.InvariantCulture) ?? "", cells["fitted_pf"]);
            if (state.Swept.TryGetValue(output, out var swept))
                Assert.Equal(swept.PeakPicofarads, written.GetProperty("peak").GetProperty("peakPicofarads").GetInt64());
        }
    }

    [Fact]
    public void Every_figure_names_the_journal_entry_that_holds_it()
    {
        var entries = _job.Reading.Entries.ToDictionary(entry => entry.Sequence, entry => entry.Event);

        foreach (var one in JobReport.Of(_job.Source).Outputs)
        {
            Assert.Equal(one.AsFound!.Millivolts, Assert.IsType<OutputSurveyed>(entries[one.AsFound.Entry!.Value]).Millivolts);
            if (one.Peak is not null)
                Assert.Equal(one.Peak.PeakPicofarads, Assert.IsType<OutputSwept>(entries[one.Peak.Entry!.Value]).PeakPicofarads);
            if (one.Fitted is not null)
                Assert.Equal(one.Fitted.MeasuredPicofarads, Assert.IsType<OutputFitted>(entries[one.Fitted.Entry!.Value]).MeasuredPicofarads);
            if (one.Check is not null)
                Assert.Equal(one.Check.MeasuredMillivolts, Assert.IsType<OutputChecked>(entries[one.Check.Entry!.Value]).Millivolts);
        }
    }

    [Fact]
    public void What_is_missing_or_unexplained_is_said()
    {
        var gaps = JobReport.Of(_job.Source).NotDone;

        Assert.Contains("Levelling at the magnets: not begun.", gaps);
        Assert.Contains("Survey as left: nothing recorded for output 14.", gaps);
        Assert.Contains(gaps, gap => gap.Contains("noise does not explain stays open at output 10.", StringComparison.Ordinal));
        Assert.Contains("Levelling at the magnet ended outside the target's band at output 2.", gaps);
        Assert.Contains(gaps, gap => gap.StartsWith("The old capacitor is not logged for output", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_was_done_at_a_magnet_stands_with_its_output()
    {
        var rows = PrintedTable.Read(await Html(ReportLength.Shop), "levels");

        Assert.Equal("2 moves; no nearer, for contact", rows[2]["magnet"]);
        Assert.Equal("", rows[3]["magnet"]);
    }

    [Fact]
    public void Instruments_stand_with_identity_and_calibration_date()
    {
        var shop = new ShopSettings { Name = "s", Instruments = [new() { Identity = "SN-17", Calibrated = new(2026, 2, 3), By = "certificate 9" }] };

        var instruments = JobReport.Of(_job.Source with { Shop = shop }).Instruments;

        Assert.Contains(instruments, one =>
            one.Identity == "Maker,Meter,SN-17,1.0" && one.Calibrated == new DateOnly(2026, 2, 3) && one.CalibratedBy == "certificate 9");
        Assert.Contains(instruments, one => one.Identity == "BOX-3" && one.Calibrated == new DateOnly(2026, 1, 15) && one.CalibratedBy == "LCR meter SN-4");
        Assert.Contains(instruments, one => one.Role == "capacitance meter" && one.Identity == "Maker,Lcr,SN-4,1.0");
    }

    public void Dispose() => _job.Dispose();

    private Task<string> Html(ReportLength length) => ReportPage.HtmlAsync(JobReport.Of(_job.Source), ReportCharts.Of(_job.Reading.State), length);

    private static double? Off(JobState state, CurveStand stand, int output) =>
        CurveComparison.Of(LevelCurve.Of(state, stand), TargetCurve.Of(state.Profile!)).Deviations.FirstOrDefault(one => one.Output == output)?.Decibels;
}
