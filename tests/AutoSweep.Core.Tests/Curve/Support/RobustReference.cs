using System.Diagnostics;
using System.Text.Json;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Curve.Support;

/// <summary>Worked figures by statsmodels and SciPy (tests/Reference/robust), stored and made anew.</summary>
internal static class RobustReference
{
    private const string Folder = "tests/Reference/robust/";

    /// <summary>A Python that has both packages, if there is one.</summary>
    internal static string? Program { get; } = new[] { "/usr/bin/python3", "python3" }.FirstOrDefault(HasPackages);

    internal static JsonElement Stored { get; } = Parse(Repository.Text(Folder + "robust_regression.json"));

    internal static JsonElement MadeNow() => Parse(Output(Program!, Repository.PathOf(Folder + "robust_regression.py")));

    internal static double[] Numbers(this JsonElement one, string name) => [.. one.GetProperty(name).EnumerateArray().Select(number => number.GetDouble())];

    private static bool HasPackages(string program)
    {
        try
        {
            return Output(program, "-c", "import scipy, statsmodels; print('both')").StartsWith("both", StringComparison.Ordinal);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    private static string Output(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        return process.StandardOutput.ReadToEnd();
    }

    private static JsonElement Parse(string text) => JsonDocument.Parse(text).RootElement;
}
