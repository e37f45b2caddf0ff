using System.Globalization;

namespace AutoSweep.Core.Curve;

/// <summary>How far one output lies from the curve that its neighbours make, and what may be said of it.</summary>
/// <param name="Output">The output's number.</param>
/// <param name="ResidualDecibels">How many decibels its level lies above what its neighbours predict; none where nothing can be said.</param>
/// <param name="ScaleDecibels">One standard deviation of that for a healthy output: scatter of its group, or its reading's uncertainty if more.</param>
/// <param name="Rule">What it was compared with.</param>
/// <param name="Verdict">What may be said.</param>
public sealed record LevelOutlier(int Output, double? ResidualDecibels, double ScaleDecibels, OutlierRule Rule, OutlierVerdict Verdict)
{
    /// <summary>Whether its neighbours do not explain its level.</summary>
    public bool IsOutlier => Verdict is OutlierVerdict.Above or OutlierVerdict.Below;

    /// <summary>The residual in standard deviations; none where nothing can be said.</summary>
    public double? Ratio => ResidualDecibels / ScaleDecibels;

    /// <summary>The verdict's grounds in a sentence part.</summary>
    public string Evidence => ResidualDecibels is not { } off ? "nothing to compare it with" : string.Create(
        CultureInfo.InvariantCulture, $"{Math.Abs(off):0.0} dB {Side(off)} {Reference} (scatter {ScaleDecibels:0.00} dB)");

    private string Reference => Rule == OutlierRule.GroupMedian ? "the median of its group" : "what its neighbours predict";

    private static string Side(double off) => off < 0 ? "below" : "above";
}
