namespace AutoSweep.Core.Magnets;

/// <summary>An output that is worth going to its magnet for.</summary>
/// <param name="Output">Its number.</param>
/// <param name="Decibels">How far its level lies above the target.</param>
/// <param name="TargetMillivolts">The target at the terminal, overall gain in, in millivolts rms.</param>
/// <param name="SavedDecibels">What it is outside its tolerance by: what the work takes away.</param>
/// <param name="ExpectedMoves">How many moves that is likely to take.</param>
public sealed record MagnetWork(int Output, double Decibels, double TargetMillivolts, double SavedDecibels, double ExpectedMoves)
{
    /// <summary>Which way the rod has to go in the end.</summary>
    public MoveDirection Direction => Decibels > 0 ? MoveDirection.Out : MoveDirection.In;

    /// <summary>Decibels saved a move.</summary>
    public double Worth => SavedDecibels / ExpectedMoves;
}
