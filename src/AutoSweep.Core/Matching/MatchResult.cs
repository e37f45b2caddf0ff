namespace AutoSweep.Core.Matching;

/// <summary>The match of a whole generator, with the proof of how far from the best it can be.</summary>
/// <param name="Outputs">Every output, in ascending number.</param>
/// <param name="Outside">Outputs outside the loss limit: the first thing to be kept low.</param>
/// <param name="PartsUsed">Parts used: the second.</param>
/// <param name="Moved">Parts taken from an output that had them in the earlier match: the third.</param>
/// <param name="TotalLoss">The total expected loss, in units of <see cref="LossUnitDecibels"/>: the last.</param>
/// <param name="Candidates">How many combinations the last round chose from.</param>
/// <param name="Rounds">How often the choice was widened, and once.</param>
public sealed record MatchResult(
    IReadOnlyList<MatchedOutput> Outputs, LevelProof Outside, LevelProof PartsUsed, LevelProof Moved, LevelProof TotalLoss, int Candidates,
        int Rounds)
{
    /// <summary>The grain in which losses are summed: 10⁻⁷ dB, far below what any meter tells.</summary>
    public const double LossUnitDecibels = 1e-7;

    /// <summary>The total expected loss of the outputs that have parts, in decibels.</summary>
    public double TotalLossDecibels => TotalLoss.Value * LossUnitDecibels;

    /// <summary>What the total loss cannot be below, outputs outside, parts and moves being as they are, in decibels.</summary>
    public double TotalLossBoundDecibels => TotalLoss.Bound * LossUnitDecibels;

    /// <summary>Whether no better match exists with these parts, at any level.</summary>
    public bool IsProven => Outside.IsProven && PartsUsed.IsProven && Moved.IsProven && TotalLoss.IsProven;
}
