using AutoSweep.Core.Journal;
using AutoSweep.Worker.Charts;

namespace AutoSweep.Worker.Reports;

/// <summary>The charts of a record, as SVG.</summary>
/// <param name="Levels">Level over output; none where no curve was read.</param>
/// <param name="Deviations">Deviation from the target over output; none without a target.</param>
/// <param name="Sweeps">Level over capacitance of every swept output, by number.</param>
public sealed record ReportCharts(string? Levels, string? Deviations, IReadOnlyDictionary<int, string> Sweeps)
{
    /// <summary>Draws them.</summary>
    public static ReportCharts Of(JobState state)
    {
        var curves = ReportCurves.Of(state);
        var compared = curves.Comparisons.Any(one => one.Deviations.Any(off => off.Decibels is not null));
        return new(
            curves.Curves.Count > 0 ? LevelCurveChart.Svg("levels-chart", curves.Curves, curves.Comparisons) : null,
            compared ? DeviationChart.Svg("deviations-chart", curves.Curves, curves.Comparisons) : null,
            state.Swept.Values.ToDictionary(swept => swept.Output, swept => PeakChart.Svg(
                FormattableString.Invariant($"sweep-{swept.Output}"), swept, state.SweepReadings.GetValueOrDefault(swept.Output, []))));
    }
}
