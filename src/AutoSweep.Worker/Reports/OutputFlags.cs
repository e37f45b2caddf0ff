using AutoSweep.Core.Curve;

namespace AutoSweep.Worker.Reports;

/// <summary>What is to be remarked of an output's level, in a record's words.</summary>
public static class OutputFlags
{
    /// <summary>The words, separated by semicolons; empty for a healthy output.</summary>
    public static string Text(ReportOutput one) => string.Join("; ", Of(one));

    // What is cured by now is said to have been so as found; what the last reading shows stands plain.
    private static IEnumerable<string> Of(ReportOutput one)
    {
        foreach (var flag in one.FlagsAsFound)
            yield return FindingWords.Of(flag) + (one.AsLeft is not null && !one.FlagsAsLeft.Contains(flag) ? " as found" : "");
        foreach (var flag in one.FlagsAsLeft.Except(one.FlagsAsFound))
            yield return FindingWords.Of(flag) + " as left";
        if (one.Now?.Verdict is CurveVerdict.TooLoud)
            yield return "too loud";
        if (one.Now?.Verdict is CurveVerdict.TooSoft)
            yield return "too soft";
    }
}
