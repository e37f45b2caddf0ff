namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>One row of the check with hardware.</summary>
/// <param name="What">What was checked.</param>
/// <param name="Found">What the meter did.</param>
/// <param name="Expected">What the driver file, or the work on a bench, wants.</param>
/// <param name="Verdict">Whether the one holds the other.</param>
/// <param name="Reason">Why, or what to do; empty where it is plain.</param>
public sealed record LiveCheckRow(string What, string Found, string Expected, LiveVerdict Verdict, string Reason = "")
{
    /// <summary>A row that holds or does not.</summary>
    internal static LiveCheckRow Judged(string what, string found, string expected, bool holds, string whenNot) =>
        new(what, found, expected, holds ? LiveVerdict.Ok : LiveVerdict.Short, holds ? "" : whenNot);

    /// <summary>A row for which something is missing.</summary>
    internal static LiveCheckRow NotChecked(string what, string reason, string found = "") => new(what, found, "", LiveVerdict.NotChecked, reason);
}
