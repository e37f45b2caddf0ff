using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Reports;

namespace AutoSweep.Worker.History;

/// <summary>One output in two jobs.</summary>
/// <param name="Output">The output's number.</param>
/// <param name="FirstMillivolts">Its level in the first job; none where it was not read.</param>
/// <param name="SecondMillivolts">Its level in the second.</param>
/// <param name="LevelDecibels">How much louder it is in the second, overall gain taken out; none where either has no level.</param>
/// <param name="IsLevelChanged">Whether the readings' uncertainty does not explain that.</param>
/// <param name="FirstPeakPicofarads">Its peak in the first job, at the mains frequency of the profile; none where none was found.</param>
/// <param name="SecondPeakPicofarads">Its peak in the second.</param>
/// <param name="PeakPercent">How much larger the second peak is.</param>
/// <param name="IsPeakChanged">Whether the peaks' uncertainties do not explain that.</param>
/// <param name="FirstFittedPicofarads">What was fitted in the first job; none where nothing was.</param>
/// <param name="SecondFittedPicofarads">What was fitted in the second.</param>
public sealed record OutputChange(
    int Output, double? FirstMillivolts, double? SecondMillivolts, double? LevelDecibels, bool IsLevelChanged, long? FirstPeakPicofarads,
    long? SecondPeakPicofarads, double? PeakPercent, bool IsPeakChanged, long? FirstFittedPicofarads, long? SecondFittedPicofarads)
{
    // Over ninety outputs, two standard deviations would call four changed by chance; three call one in four such comparisons.
    private const double Deviations = 3;

    /// <summary>Whether anything measured changed.</summary>
    public bool IsChanged => IsLevelChanged || IsPeakChanged || FirstFittedPicofarads != SecondFittedPicofarads;

    /// <summary>One standard deviation, in decibels, of the ratio of two levels.</summary>
    internal static double DecibelsOf(LevelPoint first, LevelPoint second) =>
        20 / Math.Log(10) * double.Hypot(first.RelativeUncertainty, second.RelativeUncertainty);

    internal static OutputChange Of(int output, (LevelPoint? First, LevelPoint? Second) levels, double gain, (JobState First, JobState Second) jobs)
    {
        double? louder = levels is { First.Millivolts: > 0, Second.Millivolts: > 0 }
            ? (20 * Math.Log10(levels.Second.Millivolts / levels.First.Millivolts)) - gain : null;
        var (first, second) = (Peak(jobs.First, output), Peak(jobs.Second, output));
        return new(
            output, levels.First?.Millivolts, levels.Second?.Millivolts, louder,
            louder is { } much && Math.Abs(much) > Deviations * DecibelsOf(levels.First!, levels.Second!), first?.Picofarads, second?.Picofarads,
            100.0 * (second?.Picofarads - first?.Picofarads) / first?.Picofarads,
            Math.Abs((first?.Picofarads - second?.Picofarads) ?? 0) > Deviations * double.Hypot(first?.Sd ?? 0, second?.Sd ?? 0),
            jobs.First.Fitted.GetValueOrDefault(output)?.MeasuredPicofarads, jobs.Second.Fitted.GetValueOrDefault(output)?.MeasuredPicofarads);
    }

    private static (long Picofarads, double Sd)? Peak(JobState state, int output) => state.Swept.GetValueOrDefault(output) is { } swept
        && SweptResult.PeakOf(state, swept) is { } peak ? (peak.Capacitance.Picofarads, peak.SdPicofarads ?? peak.MainsSdPicofarads) : null;
}
