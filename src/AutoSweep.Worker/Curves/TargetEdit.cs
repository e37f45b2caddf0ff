using AutoSweep.Core;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Generator;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Curves;

/// <summary>One output's target, changed by hand.</summary>
/// <param name="Output">The output's number.</param>
/// <param name="Millivolts">Its target level in millivolts rms; none leaves it as it is.</param>
/// <param name="ToleranceDecibels">How far it may be off to either side in decibels; none leaves it as it is.</param>
/// <param name="WithoutTarget">It has no target any more.</param>
public sealed record TargetEdit(int Output, double? Millivolts, double? ToleranceDecibels, bool WithoutTarget)
{
    /// <summary>The least target level in millivolts rms.</summary>
    public const double LeastMillivolts = 0.001;

    /// <summary>The largest target level in millivolts rms.</summary>
    public const double MostMillivolts = 10_000;

    /// <summary>Makes the change; it is an entry of the job's journal, and can be taken back.</summary>
    /// <returns>The target in force now.</returns>
    /// <exception cref="BenchFaultException">No such output, nothing to change, or a tolerance without a level.</exception>
    public TargetCurve Apply(JobRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        CheckKnown(record.Profile);
        return TargetChoice.Choose(record, target => Edited(WithoutTarget ? target.Without(Output) : target.With(Point(target))));
    }

    private TargetPoint Point(TargetCurve target)
    {
        var before = target.Points.FirstOrDefault(point => point.Output == Output);
        if (Millivolts is null && ToleranceDecibels is null)
            throw new BenchFaultException(
                BenchFault.BadFile, "nothing to change", "a level, a tolerance, or that there is no target", "say what the output's target is");
        return (Millivolts ?? before?.Millivolts) is { } millivolts
            ? new(Output, millivolts, ToleranceDecibels ?? before?.ToleranceDecibels ?? TargetCurve.UsualToleranceDecibels)
            : throw new BenchFaultException(
                BenchFault.BadFile, $"output {Output} has no target level yet", "a level beside the tolerance", "give its level too");
    }

    private static TargetCurve Edited(TargetCurve target) =>
        target.Source.EndsWith(", edited", StringComparison.Ordinal) ? target : target with { Source = target.Source + ", edited" };

    private void CheckKnown(GeneratorProfile profile)
    {
        if (!profile.Outputs.Any(one => one.Number == Output))
            throw new BenchFaultException(
                BenchFault.BadFile, $"{profile.Name} has no output {Output}", $"{profile.Outputs[0].Number} to {profile.Outputs[^1].Number}",
                "name another output");
    }
}
