namespace AutoSweep.Sim.Tests.Support;

/// <summary>A fact that runs ngspice, where it is installed.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class NgspiceFactAttribute : FactAttribute
{
    public NgspiceFactAttribute()
    {
        var path = Environment.GetEnvironmentVariable("PATH") ?? "";
        if (!path.Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, "ngspice"))))
            Skip = "ngspice is not installed; the stored figures are compared all the same.";
    }
}
