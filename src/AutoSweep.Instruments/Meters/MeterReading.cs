namespace AutoSweep.Instruments.Meters;

/// <summary>What a meter answered: a value, or why there is none. A sentinel never passes as a value.</summary>
/// <param name="Kind">Whether there is a value.</param>
/// <param name="Value">The value in SI units (V, Hz, F); not a number unless <paramref name="Kind"/> is
/// <see cref="MeterReadingKind.Value"/>.</param>
/// <param name="Raw">The reply as it came, for the log.</param>
public readonly record struct MeterReading(MeterReadingKind Kind, double Value, string Raw);
