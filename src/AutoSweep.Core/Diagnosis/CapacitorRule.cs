using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Diagnosis;

/// <summary>Old capacitors that take level: the level as found against what the sweep says the filter can give.</summary>
/// <remarks>
/// One level cannot tell a wrong value from a loss, as both only lower it. What the old capacitor measured when it was off does; where
/// nobody logged that, the rule goes by how much is lost and says what remains open.
/// </remarks>
internal sealed class CapacitorRule : IFaultRule
{
    private const double DecibelsOfShare = 8.685889638; // 20 log10 e

    // An open capacitor leaves less than this share of what the largest drift leaves.
    private const double OpenMargin = 0.5;

    public IEnumerable<Finding> Find(DiagnosisCase job) => job.Outputs
        .Where(one => one is { IsFiltered: true, HasPeak: true, AsFound: not null }).Select(one => Find(one, job.Options)).OfType<Finding>();

    private static Finding? Find(OutputEvidence one, DiagnosisOptions options)
    {
        var lost = 20 * Math.Log10(one.Swept!.PeakMillivolts!.Value / Math.Max(one.ToneMillivolts, 1e-6));
        var sd = DecibelsOfShare * Math.Sqrt(Square(one.AsFoundNoise) + Square(one.PeakNoise) + Square(options.SlowChange));
        if (lost <= options.CoverageFactor * sd)
            return null;
        // What is off only because the speed is must not be blamed on the capacitor: it is judged at nominal speed.
        var effect = new CapacitorEffect(one.NominalPeakPicofarads, one.Swept.Q!.Value, one.Swept.Law);
        var fault = one.OldCapacitor is null ? ByLevel(one, effect, lost, sd, options) : ByMeasurement(one, effect, sd, options);
        return fault is null ? null : new()
        {
            Fault = fault.Value,
            Output = one.Number,
            Size = lost,
            SizeUncertainty = sd,
            Unit = "dB",
            Evidence = FormattableString.Invariant($"As found {one.ToneMillivolts:0.000} mV, where the filter gives {one.Swept.PeakMillivolts:0.000} mV at its ")
                + FormattableString.Invariant($"peak ({effect.PeakPicofarads / 1000:0.0} nF at nominal speed, Q {effect.Q:0.0}): {lost:0.0} dB lost. ")
                + (one.OldCapacitor is null ? Guess(fault.Value, options) : Measured(one, effect)),
            Confirm = FaultWords.Confirm(fault.Value),
        };
    }

    private static GeneratorFault? ByMeasurement(OutputEvidence one, CapacitorEffect effect, double sd, DiagnosisOptions options)
    {
        if (one.OldCapacitor!.Measured is not { } measured || measured.Picofarads < options.OpenShare * effect.PeakPicofarads)
            return GeneratorFault.CapacitorOpen;
        var byValue = effect.LossDecibels(measured.Picofarads, 0);
        var byLoss = effect.LossDecibels(measured.Picofarads, measured.Dissipation ?? 0) - byValue;
        if (measured.Dissipation >= options.LeakyDissipation && byLoss >= options.LeakyDecibels)
            return GeneratorFault.CapacitorLeaky;
        return byValue > options.CoverageFactor * sd ? GeneratorFault.CapacitorDrifted : null;
    }

    private static GeneratorFault? ByLevel(OutputEvidence one, CapacitorEffect effect, double lost, double sd, DiagnosisOptions options)
    {
        var bySpeed = effect.LossDecibels(one.Swept!.PeakPicofarads!.Value, 0);
        var sound = effect.LossDecibels(effect.PeakPicofarads, options.SoundDissipation) + options.MatchedDecibels;
        if (lost <= bySpeed + sound + (options.CoverageFactor * sd))
            return null;
        var most = Math.Max(effect.LossDecibels(options.LargestDrift * effect.PeakPicofarads, 0),
            effect.LossDecibels(effect.PeakPicofarads / 2, 0));
        // A tap makes a trap beside the peak: a drift into it leaves as little as one likes.
        if (effect.Law == ResponseLaw.General || lost <= most + (options.CoverageFactor * sd))
            return GeneratorFault.CapacitorDrifted;
        return one.ToneMillivolts < OpenMargin * Math.Pow(10, -most / 20) * one.Swept!.PeakMillivolts!.Value
            ? GeneratorFault.CapacitorOpen
            : GeneratorFault.CapacitorLeaky;
    }

    private static string Measured(OutputEvidence one, CapacitorEffect effect) => one.OldCapacitor!.Measured is not { } measured
        ? "The old capacitor does not measure as one any more."
        : FormattableString.Invariant($"It measured {measured.Picofarads / 1000.0:0.0} nF")
            + (measured.Dissipation is { } d ? FormattableString.Invariant($", D {d:0.000}") : "")
            + FormattableString.Invariant($", which costs {effect.LossDecibels(measured.Picofarads, 0):0.0} dB by its value and ")
            + FormattableString.Invariant($"{effect.LossDecibels(measured.Picofarads, measured.Dissipation ?? 0) - effect.LossDecibels(measured.Picofarads, 0):0.0} dB by its losses.");

    private static string Guess(GeneratorFault fault, DiagnosisOptions options) => fault switch
    {
        GeneratorFault.CapacitorDrifted => "A wrong value explains it, and so would losses: what it measures once it is off tells.",
        GeneratorFault.CapacitorOpen => FormattableString.Invariant($"Not even a drift to {options.LargestDrift:0} times its value leaves so little."),
        _ => FormattableString.Invariant($"A drift to {options.LargestDrift:0} times its value would leave more, an open one less."),
    };

    private static double Square(double value) => value * value;
}
