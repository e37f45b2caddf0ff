using System.Reflection;

namespace AutoSweep.Worker;

/// <summary>The program's name and version, as records keep them.</summary>
public static class Software
{
    /// <summary>Name and version, such as <c>AutoSweep 0.1.0</c>.</summary>
    public static string NameAndVersion { get; } =
        "AutoSweep "
        + typeof(Software).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0];
}
