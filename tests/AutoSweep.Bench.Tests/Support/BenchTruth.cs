using System.Text.Json;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>What a shipped simulated bench's file says is on it, for tests to hold results against; no worker is ever told.</summary>
internal static class BenchTruth
{
    /// <summary>What each part of the drawer measures, in picofarads, ascending.</summary>
    public static IEnumerable<double> Parts(string bench)
    {
        using var read = Read(bench);
        return [.. read.RootElement.GetProperty("parts").EnumerateArray().Select(part => part.GetProperty("picofarads").GetDouble()).Order()];
    }

    /// <summary>What the capacitor of each filtered output has become.</summary>
    public static IReadOnlyDictionary<int, (double Picofarads, double LossTangent)> Aged(string bench)
    {
        using var read = Read(bench);
        return read.RootElement.GetProperty("outputs").EnumerateArray().Where(output => output.TryGetProperty("aged", out _)).ToDictionary(
            output => output.GetProperty("number").GetInt32(),
            output => (output.GetProperty("aged").GetProperty("picofarads").GetDouble(), output.GetProperty("aged").GetProperty("lossTangent").GetDouble()));
    }

    private static JsonDocument Read(string bench) =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(Path.GetDirectoryName(Programs.Simulator)!, "benches", $"{bench}.json")));
}
