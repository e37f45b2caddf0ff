using AutoSweep.Core.Journal;

namespace AutoSweep.Core.Curve;

/// <summary>A level curve of a job, each point traceable to a journalled reading.</summary>
/// <param name="Stand">When it was read.</param>
/// <param name="Points">The outputs that were read, in ascending number.</param>
public sealed record LevelCurve(CurveStand Stand, IReadOnlyList<LevelPoint> Points)
{
    // What an absolute level on a few millivolts is uncertain by where an old journal does not say: 3 % (0.1 % of a 100 mV range at 3 mV;
    // meters' data sheets, from memory).
    private const double UnstatedUncertainty = 0.03;

    /// <summary>A job's curve at a stand; without points where it was not read.</summary>
    public static LevelCurve Of(JobState state, CurveStand stand) => new(stand, stand switch
    {
        CurveStand.AsFound => [.. state.Surveyed.Values.Select(Point)],
        CurveStand.AfterRecap when state.Checked.IsEmpty => [],
        CurveStand.AfterRecap => [.. state.Surveyed.Values.Where(one => !state.Checked.ContainsKey(one.Output)).Select(Point)
            .Concat(state.Checked.Values.Select(seen => Point(state, seen))).OrderBy(point => point.Output)],
        _ => [.. state.AsLeft.Values.Select(Point)],
    });

    private static LevelPoint Point(OutputSurveyed surveyed) =>
        new(surveyed.Output, surveyed.Millivolts, surveyed.RelativeUncertainty ?? UnstatedUncertainty);

    // The same meter on the same range as in the survey.
    private static LevelPoint Point(JobState state, OutputChecked seen) => new(
        seen.Output, seen.Millivolts, state.Surveyed.GetValueOrDefault(seen.Output)?.RelativeUncertainty ?? UnstatedUncertainty);
}
