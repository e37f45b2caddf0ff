using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Diagnosis;

/// <summary>Filtered outputs that are all low while plain ones are not: something of too little resistance is clipped on.</summary>
/// <remarks>
/// A plain coil has tens to hundreds of ohms, a filter at its peak kilohms, so a load takes level and Q from the filtered outputs and hardly
/// any from the plain ones. The step between the two is judged against the target curve's.
/// </remarks>
internal sealed class LoadingRule : IFaultRule
{
    // Fewer outputs on either side say nothing about a step.
    private const int FewestOutputs = 5;

    public IEnumerable<Finding> Find(DiagnosisCase job)
    {
        var plain = Levels(job, one => one is { IsFiltered: false, HasTone: true }, one => one.AsFound!.Millivolts);
        var filtered = Levels(job, one => one is { IsFiltered: true, HasPeak: true }, one => one.Swept!.PeakMillivolts!.Value);
        if (plain.Count < FewestOutputs || filtered.Count < FewestOutputs)
            yield break;
        var step = filtered.Median() - plain.Median();
        var sd = Math.Sqrt(MedianVariance(plain) + MedianVariance(filtered) + Math.Pow(job.Options.CurveStepUncertainty, 2));
        if (step >= -job.Options.CoverageFactor * sd)
            yield break;
        var q = job.Outputs.Where(one => one.HasPeak).Select(one => one.Swept!.Q!.Value).Median();
        yield return new()
        {
            Fault = GeneratorFault.MeterLoading,
            Size = step,
            SizeUncertainty = sd,
            Unit = "dB",
            Evidence = FormattableString.Invariant($"{filtered.Count} filtered outputs lie {-step:0.0} dB lower than the curve has them against {plain.Count} plain ones, ")
                + FormattableString.Invariant($"with a median Q of {q:0.0}: what is clipped on may load them."),
            Confirm = FaultWords.Confirm(GeneratorFault.MeterLoading),
        };
    }

    private static List<double> Levels(DiagnosisCase job, Func<OutputEvidence, bool> which, Func<OutputEvidence, double> millivolts) =>
        [.. job.Outputs.Where(which).Where(one => job.Target.ContainsKey(one.Number))
            .Select(one => 20 * Math.Log10(millivolts(one) / job.Target[one.Number]))];

    // The variance of a median is π/2 of the mean's.
    private static double MedianVariance(List<double> levels)
    {
        var median = levels.Median();
        return Math.PI / 2 * Math.Pow(1.4826 * levels.Select(level => Math.Abs(level - median)).Median(), 2) / levels.Count;
    }
}
