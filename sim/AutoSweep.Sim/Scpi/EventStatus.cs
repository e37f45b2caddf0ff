namespace AutoSweep.Sim.Scpi;

/// <summary>The standard event status register (IEEE 488.2, 11.5.1).</summary>
[Flags]
internal enum EventStatus
{
    None = 0,
    OperationComplete = 1,
    QueryError = 4,
    DeviceError = 8,
    ExecutionError = 16,
    CommandError = 32,
    PowerOn = 128,
}
