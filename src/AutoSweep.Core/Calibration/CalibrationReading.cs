namespace AutoSweep.Core.Calibration;

/// <summary>One reading of a capacitance meter at the fixture's clips.</summary>
/// <param name="Closed">The relays told to be closed; bit 0 is relay 1.</param>
/// <param name="Picofarads">The parallel capacitance Cp in picofarads, the meter's lead capacitance taken off.</param>
/// <param name="Dissipation">The dissipation D at the test frequency, or null where the meter gives none.</param>
public readonly record struct CalibrationReading(uint Closed, double Picofarads, double? Dissipation = null);
