namespace AutoSweep.Core.Magnets;

/// <summary>How far in a rod may go before anybody could fear for the wheel.</summary>
/// <remarks>
/// The gap as found is known from below only (<see cref="MagnetRod.LeastGapMillimetres"/>). How far in of its old place the rod stands now is told by the
/// level: what it has risen, over the shallowest slope that is still believed. What is left of the least gap, less the reserve, bounds the next move, with
/// the hand's and the lock's worst taken off; and no move may use more than a share of what is left.
/// </remarks>
internal static class InwardLimit
{
    // One in a hundred: the slope's uncertainty is one of three margins, beside the hand's and the reserve.
    private const double Shallow = 0.01;

    /// <summary>The furthest that the rod may stand in of its place as found, in millimetres; below 0 if it stands further out for sure.</summary>
    /// <param name="rise">By how many decibels the level is above the level as found.</param>
    /// <param name="riseSd">One standard deviation of that.</param>
    /// <param name="slope">The belief.</param>
    internal static double MostInward(double rise, double riseSd, SlopeBelief slope)
    {
        var most = rise + (2 * riseSd);
        return most / slope.Quantile(most > 0 ? Shallow : 1 - Shallow);
    }

    /// <summary>The longest move in that is allowed, in millimetres; 0 or less where none is.</summary>
    internal static double LongestMove(double mostInward, double leastGap, MagnetGuidanceOptions options)
    {
        var left = leastGap - Math.Max(0, mostInward);
        var deepest = Math.Min(leastGap - options.ReserveMillimetres, Math.Max(0, mostInward) + (options.InwardShare * left));
        return (deepest - mostInward - (options.HandSigmas * options.LockingMillimetres)) / (1 + (options.HandSigmas * options.HandShare));
    }
}
