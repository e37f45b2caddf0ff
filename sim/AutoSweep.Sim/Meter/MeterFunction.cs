namespace AutoSweep.Sim.Meter;

/// <summary>What the meter measures.</summary>
internal enum MeterFunction
{
    AcVolts,
    Frequency,
}
