using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Reports;

/// <summary>A swept output in results.json.</summary>
/// <param name="Swept">The search's answer; its peak belongs to the tone at which it was measured.</param>
/// <param name="PeakAtNominalMainsPicofarads">
/// The peak carried over to the nominal mains frequency (it goes as the square of the tone's period): what is to be fitted. None without a peak.
/// </param>
/// <param name="PeakAtNominalMainsSdPicofarads">One standard deviation of that, what is not known of the mains in it; none where it is not known.</param>
/// <param name="MainsTakenAsNominal">Whether no tone was counted, so that the mains were taken as nominal.</param>
/// <param name="Readings">The readings behind it.</param>
public sealed record SweptResult(
    OutputSwept Swept, long? PeakAtNominalMainsPicofarads, double? PeakAtNominalMainsSdPicofarads, bool MainsTakenAsNominal, IReadOnlyList<LevelRead> Readings)
{
    /// <summary>The result of an output.</summary>
    public static SweptResult From(JobState state, OutputSwept swept)
    {
        var peak = PeakOf(state, swept);
        return new(swept, peak?.Capacitance.Picofarads, peak?.SdPicofarads, peak is { IsMainsAssumed: true }, state.SweepReadings.GetValueOrDefault(swept.Output, []));
    }

    /// <summary>The peak of an output at nominal mains; none where its sweep found no peak.</summary>
    public static NominalPeak? PeakOf(JobState state, OutputSwept swept)
    {
        var output = state.Profile!.Outputs.Single(one => one.Number == swept.Output);
        return swept.PeakPicofarads is > 0 and var peak
            ? NominalPeak.Of(new Capacitance(peak), swept.PeakSdPicofarads, swept.ToneHertz, state.Profile.ToneOf(output).Hertz) : null;
    }
}
