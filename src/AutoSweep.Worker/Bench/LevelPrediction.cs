using AutoSweep.Core.Journal;
using AutoSweep.Core.Matching;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Bench;

/// <summary>The level that an output should give with its fitted parts, as its sweep tells.</summary>
/// <param name="Millivolts">The predicted level of the tone in millivolts rms.</param>
/// <param name="HumMillivolts">Hum under the tone in millivolts rms.</param>
/// <param name="RelativeSd">One standard deviation of the prediction as a share of it.</param>
public sealed record LevelPrediction(double Millivolts, double HumMillivolts, double RelativeSd)
{
    // Warm-up, mains and room move a level by about a per cent between two visits (common practice, no source).
    private const double SlowChange = 0.01;

    // Nobody measured it, as on a meter that is read and typed: film capacitors lie between 0 and the 0.008 that polyester may have at 1 kHz (IEC 60384-2,
    // from memory). A limit with nothing known within it is rectangular: its middle, and half its width over √3 (JCGM 100:2008, GUM, 4.3.7).
    private const double MostDissipation = 0.008;

    // A difference of more than three standard deviations is chance in three of a thousand (normal distribution).
    private const double CoverageFactor = 3;

    // 20 log10 e: a small share of a level in decibels.
    private const double DecibelsOfShare = 8.685889638;

    /// <summary>The prediction for an output.</summary>
    /// <returns>None where the output was not swept to a peak, or nothing is fitted.</returns>
    public static LevelPrediction? Of(JobState state, int output)
    {
        if (!state.Fitted.TryGetValue(output, out var fitted) || !state.Swept.TryGetValue(output, out var swept))
            return null;
        if (swept.PeakMillivolts is not { } peak || MatchTargets.Of(state, swept, 0) is not { } target)
            return null;
        var lost = new LevelLoss(target with { SdPicofarads = 0 }).Decibels(fitted.MeasuredPicofarads);
        var readings = state.SweepReadings.GetValueOrDefault(output, []);
        var noise = readings.Count > 0 ? readings.Average(read => read.RelativeNoise) : 0;
        // Losses add: 1/Q of the filter is 1/Q of its coil and the capacitor's D (any textbook on resonance), and the level at the peak goes as Q.
        var damping = 1 + ((swept.Q ?? 0) * (fitted.Dissipation ?? (MostDissipation / 2)));
        var unknown = fitted.Dissipation is null ? (swept.Q ?? 0) * MostDissipation / 2 / Math.Sqrt(3) / damping : 0;
        return new(peak * Math.Pow(10, -lost / 20) / damping, swept.HumMillivolts ?? 0,
            Math.Sqrt((noise * noise) + (SlowChange * SlowChange) + (unknown * unknown)));
    }

    /// <summary>What a reading says against the prediction.</summary>
    /// <param name="output">The output.</param>
    /// <param name="toneHertz">The tone counted, where there was one.</param>
    /// <param name="sample">The reading, hum in it.</param>
    public OutputChecked Compare(int output, double? toneHertz, LevelSample sample)
    {
        var read = sample.Mean.Millivolts;
        var tone = Math.Sqrt(Math.Max(0, (read * read) - (HumMillivolts * HumMillivolts)));
        var sd = DecibelsOfShare * Math.Sqrt((sample.RelativeNoise * sample.RelativeNoise) + (RelativeSd * RelativeSd));
        return new()
        {
            Output = output,
            ToneHertz = toneHertz,
            Millivolts = tone,
            PredictedMillivolts = Millivolts,
            StandardUncertaintyDecibels = sd,
            IsExplained = Math.Abs(20 * Math.Log10(tone / Millivolts)) <= CoverageFactor * sd,
        };
    }
}
