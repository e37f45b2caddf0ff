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

    // A load only takes level, so one side of the distribution counts: 95 % of the normal law.
    private const double OneSided = 1.645;

    public IEnumerable<Finding> Find(DiagnosisCase job)
    {
        var plain = Levels(job.Outputs.Where(one => one is { IsFiltered: false, HasTone: true }), job, one => one.AsFound!.Millivolts);
        var peaked = job.Outputs.Where(one => one is { IsFiltered: true, HasPeak: true }).ToList();
        // The group of the highest impedance loses most; a group by itself must stand out more, as there are several.
        Candidate[] candidates =
        [
            new("filtered outputs", peaked, OneSided),
            .. peaked.GroupBy(one => one.Output.Group).Select(group => new Candidate($"outputs of the group \"{group.Key}\"", [.. group], job.Options.CoverageFactor)),
        ];
        return candidates.Select(candidate => Find(candidate, plain, job)).OfType<Finding>().OrderBy(finding => finding.Size).Take(1);
    }

    private static Finding? Find(Candidate candidate, List<double> plain, DiagnosisCase job)
    {
        var levels = Levels(candidate.Outputs, job, one => one.Swept!.PeakMillivolts!.Value);
        if (plain.Count < FewestOutputs || levels.Count < FewestOutputs)
            return null;
        var step = levels.Median() - plain.Median();
        var sd = Math.Sqrt(MedianVariance(plain) + MedianVariance(levels) + Math.Pow(job.Options.CurveStepUncertainty, 2));
        return step >= -candidate.Factor * sd ? null : new()
        {
            Fault = GeneratorFault.MeterLoading,
            Size = step,
            SizeUncertainty = sd,
            Unit = "dB",
            Evidence = FormattableString.Invariant($"{levels.Count} {candidate.Name} lie {-step:0.0} dB lower than the curve has them against {plain.Count} plain ones, ")
                + FormattableString.Invariant($"with a median Q of {candidate.Outputs.Select(one => one.Swept!.Q!.Value).Median():0.0}: what is clipped on may load them."),
            Confirm = FaultWords.Confirm(GeneratorFault.MeterLoading),
        };
    }

    private static List<double> Levels(IEnumerable<OutputEvidence> outputs, DiagnosisCase job, Func<OutputEvidence, double> millivolts) =>
        [.. outputs.Where(one => job.Target.ContainsKey(one.Number)).Select(one => 20 * Math.Log10(millivolts(one) / job.Target[one.Number]))];

    // The variance of a median is π/2 of the mean's.
    private static double MedianVariance(List<double> levels)
    {
        var median = levels.Median();
        return Math.PI / 2 * Math.Pow(1.4826 * levels.Select(level => Math.Abs(level - median)).Median(), 2) / levels.Count;
    }

    private sealed record Candidate(string Name, IReadOnlyList<OutputEvidence> Outputs, double Factor);
}
