namespace AutoSweep.Sim.Hands;

/// <summary>One thing that the hands have done.</summary>
/// <param name="Seconds">Simulated time.</param>
/// <param name="Event">begin, clip, beep, unclip, noBeep, retry, move, lock, contact or end.</param>
/// <param name="Phase">The phase.</param>
/// <param name="Output">The terminal, where there is one.</param>
/// <param name="Note">The script's own note; of fitting, the parts; of a move, millimetres outward.</param>
/// <param name="Part">The part's place in the drawers, where there is one.</param>
internal sealed record HandsEvent(
    double Seconds, string Event, HandsPhase Phase, int? Output = null, string? Note = null, int? Part = null);
