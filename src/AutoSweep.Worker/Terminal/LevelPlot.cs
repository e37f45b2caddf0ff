using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>The level curve of a survey as it grows: a bar for each output, the strongest of its neighbours where they share a column.</summary>
public static class LevelPlot
{
    private const string Eighths = "▁▂▃▄▅▆▇█";

    /// <summary>The plot of what is surveyed so far.</summary>
    public static IRenderable Draw(JobState state, BenchStatus status)
    {
        if (state.Profile is not { Outputs.Count: > 0 } profile)
            return new PlotBox("level over output").Draw("", "");
        var top = state.Surveyed.Values.Select(one => one.Millivolts).Append(double.Epsilon).Max();
        var plot = new PlotBox(state.Surveyed.Count == 0 ? "level over output" : FormattableString.Invariant($"level over output, up to {top:0.00} mV"));
        foreach (var column in profile.Outputs.Select((output, place) => (Output: output, Column: place * PlotBox.Columns / Math.Max(profile.Outputs.Count, PlotBox.Columns))).GroupBy(one => one.Column, one => one.Output))
            Stand(plot, state, status, column, top);
        return plot.Draw($"output {profile.Outputs[0].Number}", $"{profile.Outputs[^1].Number}");
    }

    private static void Stand(PlotBox plot, JobState state, BenchStatus status, IGrouping<int, GeneratorOutput> column, double top)
    {
        var known = column.Where(output => state.Surveyed.ContainsKey(output.Number)).Select(output => state.Surveyed[output.Number]).ToList();
        if (known.Count == 0)
            return;
        var height = (int)Math.Round(known.Max(one => one.Millivolts) / top * PlotBox.Rows * Eighths.Length);
        var colour = column.Any(output => output.Number == status.Output) ? "yellow" : known.Any(one => one.Flags.Count > 0) ? "red" : "aqua";
        for (var row = 0; row * Eighths.Length < Math.Max(height, 1); row++)
            plot.Put(column.Key, row, Eighths[Math.Clamp(height - (row * Eighths.Length), 1, Eighths.Length) - 1], colour);
    }
}
