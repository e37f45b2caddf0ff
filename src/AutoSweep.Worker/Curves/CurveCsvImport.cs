using AutoSweep.Core.Curve;

namespace AutoSweep.Worker.Curves;

/// <summary>What a curve file says.</summary>
/// <param name="Points">Its points in ascending number; none where there are troubles.</param>
/// <param name="Unit">The unit that it gives its levels in.</param>
/// <param name="Notes">What a person should know: columns that were passed over, outputs without a target.</param>
/// <param name="Troubles">What is wrong, each with line and reason; a file with any is not taken.</param>
public sealed record CurveCsvImport(
    IReadOnlyList<TargetPoint> Points, LevelUnit Unit, IReadOnlyList<string> Notes, IReadOnlyList<string> Troubles);
