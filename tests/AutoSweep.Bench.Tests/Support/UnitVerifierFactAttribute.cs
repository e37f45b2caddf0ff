namespace AutoSweep.Bench.Tests.Support;

/// <summary>A test in which systemd looks at a unit file; skipped where there is no systemd.</summary>
internal sealed class UnitVerifierFactAttribute : FactAttribute
{
    public UnitVerifierFactAttribute()
    {
        if (!File.Exists(Program))
            Skip = "systemd-analyze is not installed (apt-get install systemd).";
    }

    internal static string Program => "/usr/bin/systemd-analyze";
}
