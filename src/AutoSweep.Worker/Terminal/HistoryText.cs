using System.Globalization;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.History;
using AutoSweep.Worker.Job;
using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>The shop's jobs as tables.</summary>
public static class HistoryText
{
    /// <summary>A line a job, and what was passed over.</summary>
    public static void Write(IAnsiConsole console, JobShelf shelf)
    {
        var table = new Table().AddColumns(
            "opened", "job", "generator", "as found", "swept", "fitted", "checked", "as left", "lumpiness dB", "off target");
        foreach (var job in shelf.Jobs.Select(JobSummary.Of))
            table.AddRow([.. Cells(job).Select(cell => cell.EscapeMarkup())]);
        console.Write(table);
        console.WriteLine($"{shelf.Jobs.Count} jobs in {shelf.Folder}, {shelf.Jobs.Select(JobSummary.Of).Count(job => job.IsFinished)} finished.");
        foreach (var (folder, reason) in shelf.PassedOver)
            console.WriteLine($"Passed over: {folder}: {reason}");
    }

    /// <summary>Two jobs side by side.</summary>
    /// <param name="console">Where to.</param>
    /// <param name="first">The first job.</param>
    /// <param name="second">The second job.</param>
    /// <param name="comparison">What they have to do with each other.</param>
    /// <param name="all">Also outputs of which nothing changed.</param>
    public static void Write(IAnsiConsole console, JobReading first, JobReading second, JobComparison comparison, bool all)
    {
        console.WriteLine($"A: {Title(first)}, levels {CurveText.NameOf(comparison.FirstStand)}");
        console.WriteLine($"B: {Title(second)}, levels {CurveText.NameOf(comparison.SecondStand)}");
        if (first.State.Profile!.Name != second.State.Profile!.Name)
            console.WriteLine("These are generators of different kinds: outputs are compared by number only.");
        var table = new Table().AddColumns("output", "level A mV", "level B mV", "B over A dB", "peak A", "peak B", "change %", "fitted A", "fitted B");
        foreach (var output in comparison.Outputs.Where(output => all || output.IsChanged))
            table.AddRow([.. Cells(output).Select(cell => cell.EscapeMarkup())]);
        console.Write(table);
        console.WriteLine(
            $"B is {Text(comparison.GainDecibels, "+0.0;-0.0;0.0")} dB over A as a whole, taken out above. Beyond the readings' uncertainty (!) changed: "
            + $"{comparison.Outputs.Count(output => output.IsLevelChanged)} levels, {comparison.Outputs.Count(output => output.IsPeakChanged)} peaks.");
    }

    /// <summary>How far old capacitors had drifted.</summary>
    public static void WriteDrift(IAnsiConsole console, StockState state)
    {
        console.Write(Drift("printed value", CapacitorDrift.ByNominal(state), key => new Capacitance(key).ToString()));
        console.Write(Drift("age, years", CapacitorDrift.ByAge(state), key => $"{Text(key, "0")} to {Text(key + CapacitorDrift.YearsTogether - 1, "0")}"));
    }

    private static Table Drift(string kind, IReadOnlyList<DriftGroup> groups, Func<long, string> name)
    {
        var table = new Table().AddColumns(kind, "removed", "jobs", "failed", "median drift %", "scatter %", "least %", "most %");
        foreach (var group in groups)
        {
            table.AddRow(
                (group.Key is { } key ? name(key) : "not known").EscapeMarkup(), Text(group.Count, "0"), Text(group.Jobs, "0"), Text(group.Failed, "0"),
                Text(group.MedianPercent, Signed), Text(group.ScatterPercent, "0.0"), Text(group.LeastPercent, Signed), Text(group.MostPercent, Signed));
        }

        return table;
    }

    private const string Signed = "+0.0;-0.0;0.0";

    private static IEnumerable<string> Cells(JobSummary job) =>
    [
        job.Job.State.OpenedAt!.Value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), job.Job.Name, job.Job.State.Profile!.Name,
        Progress(job, JobStage.Survey), Progress(job, JobStage.Sweep), Text(job.Job.State.Fitted.Count, "0"), Progress(job, JobStage.Check),
        Progress(job, JobStage.AsLeft), Pair(Text(job.LumpinessBefore, "0.00"), Text(job.LumpinessAfter, "0.00")),
        Pair(Text(job.OffBefore, "0"), Text(job.OffAfter, "0")),
    ];

    private static IEnumerable<string> Cells(OutputChange output) =>
    [
        Text(output.Output, "0"), Text(output.FirstMillivolts, "0.00"), Text(output.SecondMillivolts, "0.00"),
        Text(output.LevelDecibels, Signed) + Mark(output.IsLevelChanged), Farads(output.FirstPeakPicofarads), Farads(output.SecondPeakPicofarads),
        Text(output.PeakPercent, Signed) + Mark(output.IsPeakChanged), Farads(output.FirstFittedPicofarads), Farads(output.SecondFittedPicofarads),
    ];

    private static string Title(JobReading job) =>
        $"{job.Name}, {job.State.Profile!.Name}, opened {job.State.OpenedAt!.Value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}";

    private static string Progress(JobSummary job, JobStage stage) => job.Progress(stage) is { Planned: > 0 } done
        ? $"{Text(done.Done, "0")}/{Text(done.Planned, "0")}" : "";

    private static string Pair(string before, string after) => after.Length > 0 ? $"{before} -> {after}" : before;

    private static string Mark(bool changed) => changed ? " !" : "";

    private static string Farads(long? picofarads) => picofarads is { } value ? new Capacitance(value).ToString() : "";

    private static string Text(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "";
}
