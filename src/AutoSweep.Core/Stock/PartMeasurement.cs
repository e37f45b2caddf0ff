namespace AutoSweep.Core.Stock;

/// <summary>What a capacitance meter said of a part.</summary>
/// <param name="Picofarads">The measured capacitance in whole picofarads; above 0.</param>
/// <param name="UncertaintyPicofarads">The standard uncertainty (GUM, JCGM 100) of that value in picofarads; 0 where nothing is known.</param>
/// <param name="At">When it was measured.</param>
/// <param name="Dissipation">The dissipation factor, a plain ratio; none where the meter does not tell.</param>
/// <param name="Meter">The meter that measured it; none for a typed value.</param>
public sealed record PartMeasurement(long Picofarads, double UncertaintyPicofarads, DateTimeOffset At, double? Dissipation = null, string? Meter = null);
