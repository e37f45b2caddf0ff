using AutoSweep.Core.Journal;

namespace AutoSweep.Core.Diagnosis;

/// <summary>Outputs that give no tone, with whatever capacitor: dead pickups, and wheels that do not turn.</summary>
/// <remarks>An output whose sweep found a tone is alive; what hid it in the survey is the capacitor's matter.</remarks>
internal sealed class SilenceRule : IFaultRule
{
    public IEnumerable<Finding> Find(DiagnosisCase job) => job.Outputs
        .Where(one => one.AsFound is not null && !one.HasTone && !one.HasPeak).Select(one => Find(one, job)).OfType<Finding>();

    private static Finding? Find(OutputEvidence one, DiagnosisCase job)
    {
        var seen = one.AsFound!;
        // Behind a filter only the sweep can say whether there is a tone at all.
        if (one.IsFiltered && one.Swept is null)
            return null;
        if (seen.ToneHertz is { } hertz && !IsHum(hertz, job))
            return null;
        if (seen.ToneHertz is null && seen.Millivolts < job.Options.DeadMillivolts)
            return Dead(one);
        return seen.ToneHertz is not null || seen.Flags.Contains(SurveyFinding.HumOnly) || seen.Flags.Contains(SurveyFinding.ToneNotCounted)
            ? Hum(one)
            : null;
    }

    /// <summary>Whether a count is a low multiple of the mains, whatever the motor does.</summary>
    internal static bool IsHum(double hertz, DiagnosisCase job)
    {
        var multiple = Math.Round(hertz / job.MainsHertz);
        return multiple is >= 1 and <= 6 && Math.Abs((hertz / (multiple * job.MainsHertz)) - 1) <= 1.2 * job.Options.MainsLimit;
    }

    private static Finding Dead(OutputEvidence one) => new()
    {
        Fault = GeneratorFault.DeadPickup,
        Output = one.Number,
        Size = one.AsFound!.Millivolts,
        Unit = "mV",
        Evidence = FormattableString.Invariant($"No tone and only {one.AsFound.Millivolts:0.000} mV at the terminal") + Sweep(one)
            + " A live coil picks up at least some hum.",
        Confirm = FaultWords.Confirm(GeneratorFault.DeadPickup),
    };

    private static Finding Hum(OutputEvidence one) => new()
    {
        Fault = GeneratorFault.HumWithoutTone,
        Output = one.Number,
        Size = one.AsFound!.Millivolts,
        Unit = "mV",
        Evidence = FormattableString.Invariant($"{one.AsFound.Millivolts:0.000} mV at the terminal, but no tone")
            + (one.AsFound.ToneHertz is { } hertz ? FormattableString.Invariant($" (counted {hertz:0.0} Hz, a multiple of the mains)") : "") + Sweep(one)
            + " The coil is whole; what it should hear does not sound.",
        Confirm = FaultWords.Confirm(GeneratorFault.HumWithoutTone),
    };

    private static string Sweep(OutputEvidence one) => one.IsFiltered ? ", and no tone with any capacitance of the sweep." : ".";
}
