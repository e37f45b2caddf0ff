using AutoSweep.Core.Generator;
using AutoSweep.Core.Journal;

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

    /// <summary>The curve that a job is held to: the one chosen for it, else its profile's.</summary>
    /// <param name="state">A job that has been opened.</param>
    public static TargetCurve Of(JobState state) => state.ChosenTarget ?? Of(state.Profile!);

    /// <summary>A curve of which only the shape is known.</summary>
    /// <param name="name">What a technician calls it.</param>
    /// <param name="source">Where it comes from.</param>
    /// <param name="shape">Outputs with decibels over any reference of your own, and a tolerance in decibels.</param>
    /// <remarks>0 dB is written as 1 mV; a comparison fits the overall gain out, so it comes to the same.</remarks>
    public static TargetCurve OfShape(string name, string source, IEnumerable<(int Output, double Decibels, double Tolerance)> shape) => new(
        name, source, [.. shape.OrderBy(one => one.Output).Select(one => new TargetPoint(one.Output, Math.Pow(10, one.Decibels / 20), one.Tolerance))]);

    /// <summary>The same curve with one point changed or added.</summary>
    public TargetCurve With(TargetPoint point) =>
        this with { Points = [.. Points.Where(one => one.Output != point.Output).Append(point).OrderBy(one => one.Output)] };

    /// <summary>The same curve without a target for an output.</summary>
    public TargetCurve Without(int output) => this with { Points = [.. Points.Where(one => one.Output != output)] };
}
