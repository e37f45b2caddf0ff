namespace AutoSweep.Sim.Scoring;

/// <summary>What a job says of one swept output, as far as it is scored.</summary>
internal sealed record SweepRow(int Output, double PeakPicofarads, double HalfWidthPicofarads, int Readings, string StopReason);
