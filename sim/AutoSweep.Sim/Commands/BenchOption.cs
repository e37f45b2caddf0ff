using System.CommandLine;

namespace AutoSweep.Sim.Commands;

/// <summary>The option that names a bench.</summary>
internal static class BenchOption
{
    public static Option<string> Create() =>
        new("--bench") { Description = "A shipped bench's name or a bench file.", Required = true, HelpName = "NAME|FILE" };
}
