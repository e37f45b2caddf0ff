using AutoSweep.Core.Stock;

namespace AutoSweep.Core.Matching;

/// <summary>One way to cure an output: a bought part, alone or beside one that lies in stock.</summary>
/// <param name="Output">The output's number.</param>
/// <param name="Series">The series of the bought part.</param>
/// <param name="NominalPicofarads">Its value in picofarads.</param>
/// <param name="Beside">The id of the part from stock; none where the bought one stands alone.</param>
/// <param name="Chance">The chance that one piece fits.</param>
internal sealed record BuyingOption(int Output, PreferredSeries Series, long NominalPicofarads, string? Beside, double Chance)
{
    /// <summary>As many pieces for one output are bought gladly for the sake of fewer values.</summary>
    public const int FewPieces = 6;

    // Beyond this many a buying list is no help.
    private const int MostPieces = 20;

    /// <summary>How many pieces hold one that fits in 95 of 100 cases.</summary>
    public int Pieces => Chance >= 1 ? 1 : (int)Math.Ceiling(Math.Log(0.05) / Math.Log(1 - Chance));

    /// <summary>Whether so many pieces are worth naming.</summary>
    public bool IsReasonable => Chance >= 1 || (Chance > 0.05 && Pieces <= MostPieces);
}
