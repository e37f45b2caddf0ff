namespace AutoSweep.Sim.Tests.Support;

/// <summary>A fact that needs a pseudo-terminal.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class LinuxFactAttribute : FactAttribute
{
    public LinuxFactAttribute()
    {
        if (!OperatingSystem.IsLinux()) Skip = "The fixture has a pseudo-terminal on Linux only; elsewhere it is a TCP port.";
    }
}
