using AutoSweep.Core.Journal;

namespace AutoSweep.Core.Diagnosis;

/// <summary>Terminals whose tone is not their own.</summary>
internal sealed class WiringRule : IFaultRule
{
    public IEnumerable<Finding> Find(DiagnosisCase job)
    {
        foreach (var one in job.Outputs.Where(one => one.AsFound is not null))
        {
            if (one.AsFound!.Flags.Contains(SurveyFinding.Swapped))
                yield return Swapped(one);
            else if (IsForeign(one, job))
                yield return Foreign(one);
        }
    }

    private static bool IsForeign(OutputEvidence one, DiagnosisCase job) => one.AsFound is { ToneHertz: { } hertz }
        && one.AsFound.Flags.Contains(SurveyFinding.WrongTone) && !SilenceRule.IsHum(hertz, job) && !SpeedRule.Explains(job, one);

    private static Finding Swapped(OutputEvidence one) => Finding(one, FormattableString.Invariant(
        $"Its tone, {one.AsFound!.ToneHertz:0.0} Hz, came at another terminal's turn while the outputs were clipped in ascending order."));

    private static Finding Foreign(OutputEvidence one) => Finding(one, FormattableString.Invariant(
        $"A steady {one.AsFound!.ToneHertz:0.0} Hz at this terminal, where {one.NominalHertz:0.0} Hz belongs."));

    private static Finding Finding(OutputEvidence one, string evidence) => new()
    {
        Fault = GeneratorFault.MiswiredTerminals,
        Output = one.Number,
        Evidence = evidence,
        Confirm = FaultWords.Confirm(GeneratorFault.MiswiredTerminals),
    };
}
