namespace AutoSweep.Worker.Reports;

/// <summary>The job in a few plain sentences, each with its figures.</summary>
public static class ReportSummary
{
    /// <summary>The sentences; only of what was done.</summary>
    public static IReadOnlyList<string> Of(JobReport report) => [.. Surveys(report), .. Recap(report), .. Evenness(report)];

    private static IEnumerable<string> Surveys(JobReport report)
    {
        var (found, left) = (report.Outputs.Count(one => one.AsFound is not null), report.Outputs.Count(one => one.AsLeft is not null));
        if (found > 0)
            yield return $"{found} of {report.Generator.Outputs} outputs were measured before anything was touched"
                + (left > 0 ? $", and {left} once more at the end." : ".");
    }

    private static IEnumerable<string> Recap(JobReport report)
    {
        var (swept, fitted) = (report.Outputs.Count(one => one.Peak is not null), report.Outputs.Where(one => one.Fitted is not null).ToList());
        if (swept > 0)
            yield return $"For {swept} of {report.Generator.FilteredOutputs} filtered outputs the capacitance was found at which the output is loudest.";
        if (fitted.Count > 0)
            yield return FormattableString.Invariant($"{fitted.Count} filters have new capacitors, {fitted.Sum(one => one.Fitted!.Parts.Count)} measured ")
                + "parts in all; by the sweeps and the parts' measured values each loses at most "
                + FormattableString.Invariant($"{fitted.Max(one => one.Fitted!.LossDecibels):0.000} dB against its peak.");
        var seen = report.Outputs.Select(one => one.Check).OfType<ReportCheck>().ToList();
        if (seen.Count > 0)
            yield return FormattableString.Invariant($"{seen.Count(one => one.IsExplained)} of {seen.Count} levels read with the new capacitors agree with ")
                + "what the sweep predicted.";
    }

    private static IEnumerable<string> Evenness(JobReport report)
    {
        if (report.Curves.Count == 0)
            yield break;
        var (first, last) = (report.Curves[0], report.Curves[^1]);
        if (first != last && first.LumpinessDecibels is { } before && last.LumpinessDecibels is { } after)
            yield return FormattableString.Invariant($"The step in level from one output to the next was {before:0.0} dB {StageWords.Of(first.Stand)} ")
                + FormattableString.Invariant($"and is {after:0.0} dB {StageWords.Of(last.Stand)}.");
        if (last.GainDecibels is not null)
            yield return $"{Capital(StageWords.Of(last.Stand))}, {OutputCount(last.Outside.Count)} outside the target's tolerance by more than the readings' "
                + "uncertainty.";
    }

    private static string OutputCount(int count) =>
        count == 0 ? "no output is" : count == 1 ? "one output is" : FormattableString.Invariant($"{count} outputs are");

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
