namespace AutoSweep.Core.Magnets;

/// <summary>One move of a magnet rod, from loosening its set screw to locking it again.</summary>
/// <remarks>
/// Every move ends inward, so that the play of hand and hole is always taken up on the same side: a move out goes
/// <see cref="OvershootMillimetres"/> too far and comes back, a move in is straight.
/// </remarks>
/// <param name="Direction">Which way.</param>
/// <param name="Millimetres">How far the rod should be from its old place in the end; above 0.</param>
/// <param name="OvershootMillimetres">How much further out it goes before it comes back in; 0 for a move in.</param>
public sealed record MagnetMove(MoveDirection Direction, double Millimetres, double OvershootMillimetres = 0)
{
    /// <summary>How far out the rod should be from its old place: below 0 for a move in.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double OutwardMillimetres => Direction == MoveDirection.Out ? Millimetres : -Millimetres;
}
