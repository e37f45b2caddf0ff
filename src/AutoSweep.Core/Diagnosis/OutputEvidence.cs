using System.Collections.Immutable;
using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Diagnosis;

/// <summary>All that is known of one output.</summary>
/// <param name="Output">The output in the profile.</param>
/// <param name="NominalHertz">Its tone at nominal mains.</param>
/// <param name="AsFound">Its first survey; none where it was not surveyed.</param>
/// <param name="Swept">Its sweep; none where it was not swept.</param>
/// <param name="Readings">The readings of its sweep.</param>
/// <param name="OldCapacitor">What the capacitor that came off measured; none where that was not logged.</param>
internal sealed record OutputEvidence(
    GeneratorOutput Output, double NominalHertz, OutputSurveyed? AsFound, OutputSwept? Swept, ImmutableList<LevelRead> Readings,
    OldCapacitorRemoved? OldCapacitor)
{
    public int Number => Output.Number;

    public bool IsFiltered => Output.Capacitor is not null;

    /// <summary>
    /// Whether the sweep found a tone with a peak, so that coil, wheel and magnet are alive. Where no tone was counted, only a peak whose bound was reached is
    /// one: hum has no peak at a filter's capacitance.
    /// </summary>
    public bool HasPeak => Swept is { PeakPicofarads: > 0, PeakMillivolts: > 0, Q: > 0 } and ({ ToneHertz: > 0 } or { Reason: PeakStopReason.BoundReached });

    /// <summary>Whether a tone of the profile was counted in the survey, or a person named the output, nobody counted, and there is a level.</summary>
    public bool HasTone => AsFound is ({ ToneHertz: > 0 } or { IsNamedByPerson: true, ToneHertz: null }) and { Flags: var flags }
        && !flags.Any(flag => flag is SurveyFinding.WrongTone or SurveyFinding.Dead or SurveyFinding.HumOnly);

    /// <summary>
    /// The tone's level as found in millivolts, the hum that the sweep saw taken out. Where hum and level are alike it is the level itself, and
    /// so the most that the tone can be.
    /// </summary>
    public double ToneMillivolts => AsFound is null ? 0 : AsFound.Millivolts * Math.Sqrt(1 - (HumShare <= MostHumToTakeOut ? HumShare * HumShare : 0));

    /// <summary>The peak at nominal speed in picofarads: it goes as the square of the tone's period.</summary>
    public double NominalPeakPicofarads =>
        NominalPeak.Of(new(Swept!.PeakPicofarads!.Value), null, Swept.ToneHertz, NominalHertz).Capacitance.Picofarads;

    /// <summary>The noise of the sweep's readings as a share of the level.</summary>
    public double PeakNoise => Readings.Count > 0 ? Readings.Average(read => read.RelativeNoise) : 0;

    /// <summary>One standard deviation of the mean as found, as a share of the level.</summary>
    public double AsFoundNoise => AsFound is { Millivolts: > 0 } ? AsFound.NoiseMillivolts / AsFound.Millivolts / Math.Sqrt(SurveySamples) : 1;

    // Beyond this the difference of two squares is mostly their noise.
    private const double MostHumToTakeOut = 0.7;

    private double HumShare => HasPeak && AsFound!.Millivolts > 0 ? (Swept!.HumMillivolts ?? 0) / AsFound.Millivolts : 0;

    // What SurveyOptions takes of each output by default; the journal keeps the samples' spread.
    private const int SurveySamples = 7;
}
