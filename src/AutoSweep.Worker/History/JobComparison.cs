using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.History;

/// <summary>Two jobs side by side, output by output.</summary>
/// <param name="FirstStand">Of which stand the first job's levels are.</param>
/// <param name="SecondStand">Of which stand the second job's levels are.</param>
/// <param name="GainDecibels">How much louder the second generator is as a whole; fitted out of the outputs' differences.</param>
/// <param name="Outputs">The outputs of either, in ascending number.</param>
public sealed record JobComparison(CurveStand FirstStand, CurveStand SecondStand, double GainDecibels, IReadOnlyList<OutputChange> Outputs)
{
    /// <summary>Compares two jobs.</summary>
    /// <param name="first">The first job.</param>
    /// <param name="second">The second job.</param>
    /// <param name="firstStand">Which of its levels; none takes the latest that was read.</param>
    /// <param name="secondStand">The same of the second.</param>
    public static JobComparison Of(JobReading first, JobReading second, CurveStand? firstStand = null, CurveStand? secondStand = null)
    {
        var (left, right) = (Curve(first.State, firstStand), Curve(second.State, secondStand));
        var levels = (First: left.Points.ToDictionary(point => point.Output), Second: right.Points.ToDictionary(point => point.Output));
        var both = levels.First.Values.Where(point => point.Millivolts > 0 && levels.Second.GetValueOrDefault(point.Output)?.Millivolts > 0).ToList();
        var gain = both.Count == 0 ? 0 : RobustLocation.Of(
            [.. both.Select(point => 20 * Math.Log10(levels.Second[point.Output].Millivolts / point.Millivolts))],
            [.. both.Select(point => OutputChange.DecibelsOf(point, levels.Second[point.Output]))]);
        var outputs = Numbers(first.State).Union(Numbers(second.State)).Order();
        return new(left.Stand, right.Stand, gain, [.. outputs.Select(output => OutputChange.Of(
            output, (levels.First.GetValueOrDefault(output), levels.Second.GetValueOrDefault(output)), gain, (first.State, second.State)))]);
    }

    private static LevelCurve Curve(JobState state, CurveStand? stand) => stand is { } named ? LevelCurve.Of(state, named)
        : Enum.GetValues<CurveStand>().Reverse().Select(one => LevelCurve.Of(state, one)).FirstOrDefault(curve => curve.Points.Count > 0)
            ?? LevelCurve.Of(state, CurveStand.AsFound);

    private static IEnumerable<int> Numbers(JobState state) => state.Profile!.Outputs.Select(output => output.Number);
}
