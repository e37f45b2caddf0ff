using System.Diagnostics;
using System.Globalization;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Peaks.Support;

/// <summary>A netlist of tests/Reference/ngspice and the levels that ngspice gives for it.</summary>
internal static class SpiceCircuit
{
    /// <summary>Where ngspice is, if it is installed.</summary>
    internal static string? Program { get; } = (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator).Select(folder => Path.Combine(folder, "ngspice")).FirstOrDefault(File.Exists);

    /// <summary>The stored levels: capacitance in farads and volts for an emf of 1 V.</summary>
    internal static IReadOnlyList<(double Farads, double Volts)> Stored(string name) =>
        [.. File.ReadLines(PathOf(name, "levels.txt")).Where(line => !line.StartsWith('#')).Select(Pair)];

    /// <summary>The same, computed now.</summary>
    internal static IReadOnlyList<(double Farads, double Volts)> Run(string name)
    {
        using var process = Process.Start(new ProcessStartInfo(Program!, ["-b", PathOf(name, "cir")]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        string[] lines = process.StandardOutput.ReadToEnd().Split('\n');
        var farads = lines.Where(line => line.StartsWith("@c1", StringComparison.Ordinal)).Select(Value);
        return [.. farads.Zip(lines.Where(line => line.StartsWith("mag", StringComparison.Ordinal)).Select(Value))];
    }

    private static string PathOf(string name, string ending) => Repository.PathOf($"tests/Reference/ngspice/{name}.{ending}");

    private static (double Farads, double Volts) Pair(string line)
    {
        var parts = line.Split('\t');
        return (Number(parts[0]), Number(parts[1]));
    }

    private static double Value(string line) => Number(line[(line.IndexOf('=', StringComparison.Ordinal) + 1)..]);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
