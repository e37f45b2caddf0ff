using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Reports;

/// <summary>A swept output in results.json.</summary>
/// <param name="Swept">The search's answer; its peak belongs to the tone at which it was measured.</param>
/// <param name="PeakAtNominalMainsPicofarads">
/// The peak carried over to the nominal mains frequency (it goes as the square of the tone's period): what is to be fitted.
/// None without a peak or without a counted tone.
/// </param>
/// <param name="Readings">The readings behind it.</param>
public sealed record SweptResult(OutputSwept Swept, long? PeakAtNominalMainsPicofarads, IReadOnlyList<LevelRead> Readings)
{
    /// <summary>The result of an output.</summary>
    public static SweptResult From(JobState state, OutputSwept swept)
    {
        var output = state.Profile!.Outputs.Single(one => one.Number == swept.Output);
        var ratio = swept.ToneHertz / state.Profile.ToneOf(output).Hertz;
        var nominal = swept is { PeakPicofarads: { } peak, ToneHertz: > 0 } ? (long?)Math.Round(peak * ratio * ratio) : null;
        return new(swept, nominal, state.SweepReadings.GetValueOrDefault(swept.Output, []));
    }
}
