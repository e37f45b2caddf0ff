using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Diagnosis;

/// <summary>The job as the rules see it.</summary>
internal sealed class DiagnosisCase
{
    public DiagnosisCase(JobState state, IReadOnlyDictionary<int, OldCapacitorRemoved> old, DiagnosisOptions options)
    {
        (State, Options) = (state, options);
        Target = (state.ChosenTarget ?? TargetCurve.Of(state.Profile!)).Points.ToDictionary(point => point.Output, point => point.Millivolts);
        Outputs = [.. state.Profile!.Outputs.OrderBy(output => output.Number).Select(output => new OutputEvidence(
            output, state.Profile.ToneOf(output).Hertz, state.Surveyed.GetValueOrDefault(output.Number),
            state.Swept.GetValueOrDefault(output.Number), state.SweepReadings.GetValueOrDefault(output.Number, []),
            old.GetValueOrDefault(output.Number)))];
    }

    public JobState State { get; }

    public DiagnosisOptions Options { get; }

    public IReadOnlyList<OutputEvidence> Outputs { get; }

    public IReadOnlyDictionary<int, double> Target { get; }

    public double MainsHertz => State.Profile!.MainsHertz;
}
