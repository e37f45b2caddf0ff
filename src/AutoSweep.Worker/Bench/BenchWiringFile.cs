using System.Text.Json;
using AutoSweep.Core;
using AutoSweep.Core.Decades;
using AutoSweep.Core.StrictJson;
using AutoSweep.Worker.Files;

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

    /// <summary>Writes the wiring of a bench; the file that stood there is replaced in one step.</summary>
    /// <param name="path">The file.</param>
    /// <param name="wiring">The wiring; its paths as they are to be read again.</param>
    /// <exception cref="BenchFaultException">The folder cannot be written.</exception>
    public static void Write(string path, BenchWiring wiring) =>
        WholeFile.Replace(path, JsonSerializer.Serialize(wiring, StrictJsonOptions.Written) + "\n");

    private static string? Beside(string path, string? file) =>
        file is null ? null : Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, file);
}
