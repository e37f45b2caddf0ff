using AutoSweep.Core.Diagnosis;
using AutoSweep.Core.Journal;

namespace AutoSweep.Faults;

/// <summary>One generator of the study.</summary>
/// <param name="Index">Its number, from 0.</param>
/// <param name="Planted">What was planted.</param>
/// <param name="Findings">What the diagnosis found.</param>
/// <param name="State">The job that it was found in.</param>
public sealed record FaultRun(int Index, IReadOnlyList<PlantedFaultSize> Planted, IReadOnlyList<Finding> Findings, JobState State)
{
    /// <summary>Whether a planted fault was named at its place.</summary>
    public bool IsNamed(PlantedFaultSize planted) => planted.Outputs.Count == 0
        ? Findings.Any(finding => finding.Fault == planted.Fault && finding.Output is null)
        : planted.Outputs.All(output => Findings.Any(finding => finding.Fault == planted.Fault && finding.Output == output));

    /// <summary>What was found where nothing was planted.</summary>
    public IEnumerable<Finding> FalseAlarms => Findings.Where(finding => !Planted.Any(planted =>
        finding.Output is { } output ? planted.Outputs.Contains(output) : planted.Fault == finding.Fault));

    /// <summary>What was found at a planted fault's place; none where nothing was.</summary>
    public IEnumerable<GeneratorFault> NamedAt(PlantedFaultSize planted) => Findings
        .Where(finding => planted.Outputs.Count == 0 ? finding.Output is null && finding.Fault == planted.Fault : planted.Outputs.Contains(finding.Output ?? 0))
        .Select(finding => finding.Fault).Distinct();
}
