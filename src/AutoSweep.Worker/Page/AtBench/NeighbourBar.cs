namespace AutoSweep.Worker.Page.AtBench;

/// <summary>One output's level among its neighbours.</summary>
/// <param name="Output">The output.</param>
/// <param name="Millivolts">Its level in millivolts rms; none where it is not read yet.</param>
/// <param name="Share">The level over the highest of those shown, 0 to 1.</param>
/// <param name="IsHere">Whether it is the output at the clips.</param>
/// <param name="IsOdd">Whether something was noticed at it.</param>
public sealed record NeighbourBar(int Output, double? Millivolts, double Share, bool IsHere, bool IsOdd);
