namespace AutoSweep.Sim.Scoring;

/// <summary>How near one output's peak came to the truth.</summary>
/// <param name="Output">The terminal.</param>
/// <param name="Times">How often the job's file has it; once is right.</param>
/// <param name="TruePicofarads">The true peak.</param>
/// <param name="FoundPicofarads">The job's peak, not a number where it has none.</param>
/// <param name="ErrorInHalfWidths">Found less true, in true half-widths.</param>
/// <param name="LossDecibels">Level lost at the found capacitance.</param>
/// <param name="Readings">Readings taken.</param>
/// <param name="Good">Whether it is there once and within the limit.</param>
internal sealed record OutputScore(
    int Output, int Times, double TruePicofarads, double FoundPicofarads, double ErrorInHalfWidths, double LossDecibels,
    int Readings, bool Good);
