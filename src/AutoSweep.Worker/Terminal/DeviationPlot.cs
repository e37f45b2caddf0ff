using AutoSweep.Core.Curve;
using AutoSweep.Core.Generator;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>Deviations from the target over the output's number: a sign for the worst of each column, a line where the target is.</summary>
public static class DeviationPlot
{
    // Two rows stand for 1 dB at the least: a curve within half a decibel shows as a line.
    private const double LeastRange = 2.5;

    /// <summary>The plot.</summary>
    /// <param name="profile">The generator.</param>
    /// <param name="name">What the curve is called.</param>
    /// <param name="comparison">The curve against its target.</param>
    public static IRenderable Draw(GeneratorProfile profile, string name, CurveComparison comparison)
    {
        var read = comparison.Deviations.Where(one => one.Decibels is not null).ToDictionary(one => one.Output);
        var range = read.Values.Select(one => Math.Abs(one.Decibels!.Value)).Append(LeastRange).Max();
        var plot = new PlotBox(FormattableString.Invariant($"{name}: off target, height ±{range:0.0} dB"));
        for (var column = 0; column < PlotBox.Columns; column++)
            plot.Put(column, RowOf(0, range), '·', "grey");
        var places = Math.Max(profile.Outputs.Count, PlotBox.Columns);
        foreach (var column in profile.Outputs.Index().GroupBy(one => one.Index * PlotBox.Columns / places, one => one.Item.Number))
        {
            if (column.Where(read.ContainsKey).Select(output => read[output]).MaxBy(one => Math.Abs(one.Decibels!.Value)) is { } worst)
                plot.Put(column.Key, RowOf(worst.Decibels!.Value, range), Sign(worst), worst.Verdict == CurveVerdict.Within ? "aqua" : "red");
        }

        return plot.Draw($"output {profile.Outputs[0].Number}", $"{profile.Outputs[^1].Number}");
    }

    private static char Sign(CurveDeviation one) => one.Verdict == CurveVerdict.Within ? 'o' : '!';

    // The middle of the upper half's lowest row is the target.
    private static int RowOf(double decibels, double range) =>
        (int)Math.Clamp(Math.Round((decibels / range * (PlotBox.Rows - 1) / 2) + (PlotBox.Rows / 2)), 0, PlotBox.Rows - 1);
}
