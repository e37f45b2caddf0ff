using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Reports;

/// <summary>Something that the readings say is wrong, or was.</summary>
/// <param name="Output">The output; none where it concerns the whole generator.</param>
/// <param name="What">What is wrong, in a few words.</param>
/// <param name="Evidence">What the readings showed.</param>
/// <param name="Confirm">How to make sure; none where nothing is to be done.</param>
public sealed record ReportFinding(int? Output, string What, string Evidence, string? Confirm)
{
    /// <summary>The findings of a job.</summary>
    public static IReadOnlyList<ReportFinding> Of(JobState state) =>
        [.. state.Surveyed.Values.SelectMany(one => one.Flags.Select(flag => Of(one, flag, "as found")))
            .Concat(state.AsLeft.Values.SelectMany(one => one.Flags.Select(flag => Of(one, flag, "as left"))))
            .OrderBy(finding => finding.Output)];

    private static ReportFinding Of(OutputSurveyed one, SurveyFinding flag, string when) => new(
        one.Output, FindingWords.Of(flag), FormattableString.Invariant(
            $"{when}: {one.Millivolts:0.000} mV, scatter {one.NoiseMillivolts:0.000} mV, {(one.ToneHertz is { } tone ? $"tone {tone:0.00} Hz" : "no tone counted")}"),
        null);
}
