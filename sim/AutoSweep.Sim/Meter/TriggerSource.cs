namespace AutoSweep.Sim.Meter;

/// <summary>What starts a measurement.</summary>
internal enum TriggerSource
{
    Immediate,
    Bus,
    External,
}
