using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Curve;

/// <summary>Outputs of one group, without a step between them, in ascending number.</summary>
/// <param name="Outputs">Their numbers.</param>
/// <param name="Decibels">Their deviations from the target, or their levels over 1 mV where the group has no target.</param>
/// <param name="Uncertainties">One standard deviation of each reading in decibels.</param>
internal sealed record CurveRun(IReadOnlyList<int> Outputs, IReadOnlyList<double> Decibels, IReadOnlyList<double> Uncertainties)
{
    /// <summary>Every group's outputs that have a level.</summary>
    internal static IReadOnlyList<CurveRun> Of(GeneratorProfile profile, CurveComparison comparison)
    {
        var read = comparison.Deviations.Where(IsDetected).ToDictionary(one => one.Output);
        return [.. profile.Outputs.Where(output => read.ContainsKey(output.Number)).GroupBy(output => output.Group)
            .Select(group => OfGroup([.. group.Select(output => read[output.Number]).OrderBy(one => one.Output)]))];
    }

    /// <summary>The differences from each output to the next one that was read.</summary>
    internal IEnumerable<double> Differences => Decibels.Zip(Decibels.Skip(1), (one, next) => next - one);

    /// <summary>The outputs from one place to before another.</summary>
    internal CurveRun Part(int from, int to) =>
        new([.. Outputs.Take(to).Skip(from)], [.. Decibels.Take(to).Skip(from)], [.. Uncertainties.Take(to).Skip(from)]);

    private static bool IsDetected(CurveDeviation one) =>
        one.Millivolts > 0 && one.UncertaintyDecibels < CurveComparison.CoverageFactor * CurveComparison.DecibelsOfShare * LevelPoint.DetectionLimit;

    private static CurveRun OfGroup(CurveDeviation[] group)
    {
        var hasTarget = group.All(one => one.Decibels is not null);
        return new(
            [.. group.Select(one => one.Output)],
            [.. group.Select(one => hasTarget ? one.Decibels!.Value : 20 * Math.Log10(one.Millivolts))],
            [.. group.Select(one => one.UncertaintyDecibels / CurveComparison.CoverageFactor)]);
    }
}
