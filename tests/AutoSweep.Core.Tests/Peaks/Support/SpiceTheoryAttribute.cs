namespace AutoSweep.Core.Tests.Peaks.Support;

/// <summary>A theory that needs ngspice; shown as skipped, not passed, where it is not installed.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class SpiceTheoryAttribute : TheoryAttribute
{
    public SpiceTheoryAttribute()
    {
        if (SpiceCircuit.Program is null)
            Skip = "ngspice is not installed (apt-get install ngspice).";
    }
}
