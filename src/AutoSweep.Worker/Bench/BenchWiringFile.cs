using AutoSweep.Core;
using AutoSweep.Core.Decades;
using AutoSweep.Core.StrictJson;

namespace AutoSweep.Worker.Bench;

/// <summary>Reads bench.json, strictly.</summary>
public static class BenchWiringFile
{
    /// <summary>Reads the wiring of a bench.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="BenchFaultException">Missing, not JSON, an unknown field, a value out of range; names field and line.</exception>
    public static BenchWiring Read(string path)
    {
        var wiring = StrictJsonFile.Read<BenchWiring>(path).Value;
        if (wiring.Box is { } box)
            DecadeBoxChecks.Check(box, path);
        return wiring with { Calibration = Beside(path, wiring.Calibration), Drivers = Beside(path, wiring.Drivers) };
    }

    private static string? Beside(string path, string? file) =>
        file is null ? null : Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, file);
}
