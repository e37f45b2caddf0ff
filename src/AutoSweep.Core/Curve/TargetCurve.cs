using AutoSweep.Core.Generator;

namespace AutoSweep.Core.Curve;

/// <summary>The level curve that a generator should have, overall gain left out.</summary>
/// <param name="Name">What a technician calls it.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Points">One point an output, in ascending number; an output that is not among them has no target.</param>
public sealed record TargetCurve(string Name, string Source, IReadOnlyList<TargetPoint> Points)
{
    /// <summary>How far an output may be off where nobody has said otherwise: 1 dB, about what an ear notices in one note (common practice, no source).</summary>
    public const double UsualToleranceDecibels = 1;

    /// <summary>The profile's own curve: its expected levels with the usual tolerance; no points where it knows none.</summary>
    public static TargetCurve Of(GeneratorProfile profile) => new(
        profile.Name,
        "the generator profile's expected levels",
        [.. profile.Outputs.Where(output => output.ExpectedMillivolts is not null)
            .Select(output => new TargetPoint(output.Number, output.ExpectedMillivolts!.Value, UsualToleranceDecibels))]);
}
