namespace AutoSweep.Worker.Bench;

/// <summary>What the clips turned out to hold.</summary>
/// <param name="Clipped">The output now clipped; none when the plan ends in silent outputs.</param>
/// <param name="Silent">Outputs that were clipped before it and gave no tone, as the order of clipping tells.</param>
public sealed record ClipVerdict(ClippedOutput? Clipped, IReadOnlyList<SilentOutput> Silent);
