using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>The level curve of a survey as it grows: a bar for each output, the strongest where several share a column.</summary>
public static class LevelPlot
{
    private const string Eighths = "▁▂▃▄▅▆▇█";

    /// <summary>The plot of what is surveyed so far.</summary>
    public static IRenderable Draw(JobState state, BenchStatus status)
    {
        if (state.Profile is not { Outputs.Count: > 0 } profile)
            return new PlotBox("level over output").Draw("", "");
        var surveyed = state.SurveyOf(status.Stage ?? JobStage.Survey);
        var top = surveyed.Values.Select(one => one.Millivolts).Append(double.Epsilon).Max();
        var scale = surveyed.Count == 0 ? "" : FormattableString.Invariant($", up to {top:0.00} mV");
        var plot = new PlotBox("level over output" + scale);
        var places = Math.Max(profile.Outputs.Count, PlotBox.Columns);
        var columns = profile.Outputs.Index().GroupBy(one => one.Index * PlotBox.Columns / places, one => one.Item);
        foreach (var column in columns)
            Stand(plot, state, status, column, top);
        return plot.Draw($"output {profile.Outputs[0].Number}", $"{profile.Outputs[^1].Number}");
    }

    private static void Stand(PlotBox plot, JobState state, BenchStatus status, IGrouping<int, GeneratorOutput> column, double top)
    {
        var surveyed = state.SurveyOf(status.Stage ?? JobStage.Survey);
        var known = column.Where(output => surveyed.ContainsKey(output.Number))
            .Select(output => surveyed[output.Number]).ToList();
        if (known.Count == 0)
            return;
        var height = (int)Math.Round(known.Max(one => one.Millivolts) / top * PlotBox.Rows * Eighths.Length);
        var isClipped = column.Any(output => output.Number == status.Output);
        var colour = isClipped ? "yellow" : known.Any(one => one.Flags.Count > 0) ? "red" : "aqua";
        for (var row = 0; row * Eighths.Length < Math.Max(height, 1); row++)
            plot.Put(column.Key, row, Eighths[Math.Clamp(height - (row * Eighths.Length), 1, Eighths.Length) - 1], colour);
    }
}
