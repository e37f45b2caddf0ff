using System.Text.Json.Nodes;

namespace AutoSweep.Bench.Tests.Support;

/// <summary>A simulated meter with one steady tone at its input: 488 Hz, some 460 mV. Nobody takes the clip off.</summary>
internal sealed class MeterBench : IAsyncDisposable
{
    private readonly ServedBench _bench;

    private MeterBench(ServedBench bench) => _bench = bench;

    public string Meter => _bench.Meter;

    public string Generator => _bench.Ready.GetProperty("generator").GetString()!;

    /// <summary>Starts it and waits until the tone is on.</summary>
    /// <param name="rate">How much faster than real its clock runs.</param>
    /// <param name="identity">What it says it is; its own name where left out.</param>
    public static async Task<MeterBench> StartAsync(double rate, string? identity = null)
    {
        var shipped = Path.Combine(Path.GetDirectoryName(Programs.Simulator)!, "benches");
        var json = JsonNode.Parse(await File.ReadAllTextAsync(Path.Combine(shipped, "small.json")))!;
        json["meter"]!["identity"] = identity ?? json["meter"]!["identity"]!.GetValue<string>();
        json["frontEnd"]!["gain"] = 100;
        json["hands"]!["patienceSeconds"] = 100000;
        json["hands"]!["survey"] = new JsonArray(new JsonObject { ["output"] = 1 });
        using var folder = new TemporaryFolder();
        File.Copy(Path.Combine(shipped, "small.calibration.json"), folder.File("meter.calibration.json"));
        var bench = await ServedBench.StartAsync(folder.Write("meter.json", json.ToJsonString()), "survey", rate, "--events");
        while ((await bench.NextEventAsync()).GetProperty("event").GetString() != "clip")
        {
        }

        return new(bench);
    }

    public ValueTask DisposeAsync() => _bench.DisposeAsync();
}
