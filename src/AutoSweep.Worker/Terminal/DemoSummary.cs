using System.Globalization;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Commands;
using AutoSweep.Worker.Job;
using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>The end of a demo: what was found, how near it is to the simulator's truth, and where the files are.</summary>
public static class DemoSummary
{
    /// <summary>Writes the table and the verdict.</summary>
    public static void Write(IAnsiConsole console, JobState state, DemoScore score)
    {
        console.Write(Peaks(state, score));
        console.WriteLine();
        foreach (var flag in score.Flags)
            console.MarkupLineInterpolated($"Survey, output {flag.Output}: {Planted(flag)}");
        console.MarkupLineInterpolated(
            $"[bold]{state.Surveyed.Count} outputs surveyed, {state.Swept.Count} swept[/] {Median(score)}, on an invented generator.");
        console.MarkupLineInterpolated(CultureInfo.InvariantCulture,
            $"Against the simulator's own truth, looked up only now: {Worst(score)}. {(score.Good ? "All" : "NOT all")} within 5 %.");
    }

    /// <summary>Writes where the files are.</summary>
    public static void WriteFiles(IAnsiConsole console, JobFolder files)
    {
        console.WriteLine();
        (string File, string What)[] written =
        [
            (files.Sweeps, "peaks"),
            (files.Survey, "survey"),
            (files.AsLeft, "survey as left"),
            (files.PickingList + ".csv", "which part goes where"),
            (files.Results, "everything, as JSON"),
            (files.Journal, "the job's one truth"),
        ];
        foreach (var (file, what) in written.Where(one => File.Exists(one.File)))
            console.MarkupLineInterpolated($"  {file}  [grey]{what}[/]");
    }

    private static string Median(DemoScore score) =>
        FormattableString.Invariant($"in a median of {score.MedianReadings:0.#} readings");

    private static string Worst(DemoScore score) => FormattableString.Invariant(
        $"worst peak {Math.Abs(score.WorstErrorInHalfWidths) * 100:0.0} % of its half-width off, {score.WorstLossDecibels:0.0000} dB lost");

    private static Table Peaks(JobState state, DemoScore score)
    {
        var table = new Table().Border(TableBorder.Simple).Title("Peaks found, and the simulator's truth");
        string[] headings =
            ["output", "tone Hz", "peak nF", "± nF", "half-width nF", "Q", "level mV", "readings", "true nF", "off, % of half-width"];
        foreach (var heading in headings)
            table.AddColumn(new TableColumn(heading).RightAligned());
        var truth = score.Outputs.ToDictionary(one => one.Output);
        foreach (var swept in state.Swept.Values)
            table.AddRow(Row(swept, truth.GetValueOrDefault(swept.Output)));
        return table;
    }

    private static string[] Row(OutputSwept swept, DemoOutputScore? truth) =>
    [
        swept.Output.ToString(CultureInfo.InvariantCulture),
        Number(swept.ToneHertz, "0.00"),
        Number(swept.PeakPicofarads / 1000.0, "0.00"),
        Number(swept.PeakSdPicofarads / 1000, "0.00"),
        Number(swept.HalfWidthPicofarads / 1000, "0.00"),
        Number(swept.Q, "0.0"),
        Number(swept.PeakMillivolts, "0.000"),
        swept.Readings.ToString(CultureInfo.InvariantCulture),
        Number(truth?.TruePicofarads / 1000, "0.00"),
        Number(truth?.ErrorInHalfWidths * 100, "+0.0;-0.0;0.0"),
    ];

    private static string Number(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "none";

    private static string Planted(DemoFlagScore flag) => (flag.Planted.Length > 0, flag.Found) switch
    {
        (false, _) => $"flagged {flag.Flags}, where nothing was planted",
        (true, true) => $"{flag.Flags}, as planted ({flag.Planted})",
        (true, false) => $"planted {flag.Planted}, not found (flags: {(flag.Flags.Length > 0 ? flag.Flags : "none")})",
    };
}
