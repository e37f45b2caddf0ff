using AutoSweep.Core;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Worker.Files;
using AutoSweep.Worker.Page.Shared;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>The calibration files in the data folder.</summary>
/// <param name="folder">The data folder.</param>
public sealed class CalibrationShelf(string folder)
{
    /// <summary>The largest file that is taken, in bytes: twenty relays fill two kilobytes.</summary>
    public const long MostBytes = 64 * 1024;

    /// <summary>Those that can be used: the file's name and the box's serial number.</summary>
    public IReadOnlyList<(string Name, string Serial)> List() => !Directory.Exists(folder) ? [] :
        [.. Directory.EnumerateFiles(folder, "*.json").Order(StringComparer.Ordinal).Select(Known).OfType<(string, string)>()];

    /// <summary>Takes in a file that a person has uploaded; one of the same name is never written over.</summary>
    /// <param name="sent">The file; its name is for messages only.</param>
    /// <returns>The name under which it is kept.</returns>
    /// <exception cref="BenchFaultException">It is no calibration, or the folder cannot be written.</exception>
    public string TakeIn(UploadedFile sent)
    {
        var name = "calibration-" + Safe(FixtureCalibration.Parse(sent.Text, sent.Name).FixtureSerial);
        for (var number = 1; ; number++)
        {
            var file = number == 1 ? name + ".json" : FormattableString.Invariant($"{name}-{number}.json");
            var path = Path.Combine(folder, file);
            if (File.Exists(path) && File.ReadAllText(path) != sent.Text)
                continue;
            WholeFile.Replace(path, sent.Text);
            return file;
        }
    }

    private static (string, string)? Known(string path)
    {
        try
        {
            return new FileInfo(path).Length > MostBytes ? null : (Path.GetFileName(path), FixtureCalibration.Read(path).FixtureSerial);
        }
        catch (BenchFaultException)
        {
            return null;
        }
    }

    private static string Safe(string serial) => string.Concat(serial.Take(40).Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-'));
}
