using System.Text.Json;
using AutoSweep.Core;
using AutoSweep.Core.StrictJson;

namespace AutoSweep.Instruments.Fixture;

/// <summary>Writes a calibration file, whole or not at all.</summary>
public static class FixtureCalibrationFile
{
    /// <summary>Writes to a file beside it first and puts that in its place, so that a program that is killed leaves the old one.</summary>
    /// <param name="path">The file; replaced when it is there.</param>
    /// <param name="calibration">What to write.</param>
    /// <exception cref="BenchFaultException">The file cannot be written.</exception>
    public static void Write(string path, FixtureCalibration calibration)
    {
        var fresh = path + ".new";
        try
        {
            using (var file = new FileStream(fresh, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                JsonSerializer.Serialize(file, calibration, StrictJsonOptions.Written);
                file.Write("\n"u8);
                file.Flush(flushToDisk: true);
            }

            File.Move(fresh, path, overwrite: true);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BenchFaultException(
                BenchFault.BadFile, $"the calibration file {path} cannot be written ({fault.Message})",
                "a folder with room that this user may write", "mend the folder, or name another file", fault) { AtTerminal = "--out" };
        }
    }
}
