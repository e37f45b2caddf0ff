using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Charts;
using AutoSweep.Worker.Reports;

namespace AutoSweep.Worker.Page.Levels;

/// <summary>A job's level curves against its target, worked out and drawn.</summary>
public sealed record LevelsView
{
    /// <summary>The target in force.</summary>
    public required TargetCurve Target { get; init; }

    /// <summary>Whether it was chosen for this job, so that it can be taken back; otherwise it is the profile's own.</summary>
    public required bool IsChosen { get; init; }

    /// <summary>The curves that were read, in the order of the work.</summary>
    public required IReadOnlyList<LevelStand> Stands { get; init; }

    /// <summary>Every output, in ascending number.</summary>
    public required IReadOnlyList<LevelRow> Rows { get; init; }

    /// <summary>Deviation over output as SVG; none without a target or a curve.</summary>
    public required string? DeviationChart { get; init; }

    /// <summary>Level over output as SVG; none without a curve.</summary>
    public required string? LevelChart { get; init; }

    /// <summary>Works it out and draws it: some tenths of a second of work, so never for every reading. See <see cref="LevelsMemory"/>.</summary>
    /// <param name="state">A job that has been opened.</param>
    public static LevelsView Of(JobState state)
    {
        var curves = ReportCurves.Of(state);
        List<LevelStand> stands = [.. curves.Curves.Zip(curves.Comparisons, (curve, comparison) => LevelStand.Of(state.Profile!, curve, comparison))];
        var compared = curves.Comparisons.Any(one => one.Deviations.Any(off => off.Decibels is not null));
        return new()
        {
            Target = curves.Target,
            IsChosen = state.LastTarget is not null,
            Stands = stands,
            Rows = [.. state.Profile!.Outputs.Select(output => LevelRow.Of(output.Number, curves.Target, stands))],
            DeviationChart = compared ? Charts.DeviationChart.Svg("deviations-chart", curves.Curves, curves.Comparisons) : null,
            LevelChart = stands.Count > 0 ? LevelCurveChart.Svg("levels-chart", curves.Curves, curves.Comparisons) : null,
        };
    }
}
