using AutoSweep.Core.Curve;

namespace AutoSweep.Worker.Page.Levels;

/// <summary>One output on the page of levels.</summary>
/// <param name="Output">Its number.</param>
/// <param name="Target">What the target asks; none where it asks nothing.</param>
/// <param name="Read">What each curve says of it, in the order of the work; none where it was not read then.</param>
/// <param name="Verdict">Of the latest curve; none where it was not read then.</param>
/// <param name="Outlier">Against its neighbours in the latest curve; none where it is no outlier.</param>
public sealed record LevelRow(
    int Output, TargetPoint? Target, IReadOnlyList<CurveDeviation?> Read, CurveVerdict? Verdict, LevelOutlier? Outlier)
{
    /// <summary>Whether it is outside its tolerance, beyond what the reading's uncertainty explains.</summary>
    public bool IsOff => Verdict is CurveVerdict.TooLoud or CurveVerdict.TooSoft;

    /// <summary>Whether a person should look at it.</summary>
    public bool IsNotable => IsOff || Outlier is not null;

    /// <summary>What is to be said of it, in a few words; empty where nothing is.</summary>
    public string Remark => string.Join("; ", Remarks());

    /// <summary>The row of an output.</summary>
    public static LevelRow Of(int output, TargetCurve target, IReadOnlyList<LevelStand> stands)
    {
        ArgumentNullException.ThrowIfNull(target);
        List<CurveDeviation?> read = [.. stands.Select(stand => stand.Comparison.Deviations.FirstOrDefault(one => one.Output == output))];
        var outlier = stands.Count == 0 ? null : stands[^1].Outliers.Outputs.FirstOrDefault(one => one.Output == output && one.IsOutlier);
        return new(output, target.Points.FirstOrDefault(point => point.Output == output), read, read.Count == 0 ? null : read[^1]?.Verdict, outlier);
    }

    private IEnumerable<string> Remarks()
    {
        if (IsOff)
            yield return Verdict == CurveVerdict.TooLoud ? "too loud" : "too soft";
        if (Outlier is { } outlier)
            yield return $"outlier: {outlier.Evidence}";
    }
}
