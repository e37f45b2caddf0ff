namespace AutoSweep.Instruments.Meters;

/// <summary>What a capacitance meter answered: a value, or why there is none. A sentinel never passes as a value.</summary>
/// <param name="Kind">Whether there is a value.</param>
/// <param name="Picofarads">The parallel capacitance Cp in picofarads, the leads' taken off; not a number unless
/// <paramref name="Kind"/> is <see cref="CapacitanceReadingKind.Value"/>. Near 0, and noise about it, on open clips.</param>
/// <param name="Dissipation">The dissipation D at the test frequency; null where the meter gives none.</param>
/// <param name="Raw">The reply as it came, for the log.</param>
public readonly record struct CapacitanceReading(CapacitanceReadingKind Kind, double Picofarads, double? Dissipation, string Raw);
