using AutoSweep.Sim.Benches;
using AutoSweep.Sim.CapacitanceMeter;

namespace AutoSweep.Sim.Tests.Support;

/// <summary>A test bench with its LCR meter.</summary>
internal sealed class CapacitanceBench : IDisposable
{
    private readonly TestBench bench;

    public CapacitanceBench(Func<BenchDefinition, BenchDefinition>? change = null)
    {
        bench = new(change);
        Clips = new(Definition.Parts, bench.Bench);
        Meter = new(Definition.CapacitanceMeter, bench.Bench, Clips, seed: 1);
    }

    public BenchDefinition Definition => bench.Definition;

    public CapacitanceClips Clips { get; }

    public CapacitanceMeterInstrument Meter { get; }

    /// <summary>Without noise and gain error, with a few parts.</summary>
    public static BenchDefinition Exact(BenchDefinition bench) => bench with
    {
        CapacitanceMeter = bench.CapacitanceMeter with
        {
            GainErrorPercent = 0, NoisePercentOfReading = 0, NoisePicofarads = 1e-9, DissipationNoise = 0, OpenCorrectionPicofarads = 10,
            LeadPicofarads = 10,
        },
        Parts =
        [
            new() { NominalPicofarads = 100_000, TolerancePercent = 5, Picofarads = 101_230, LossTangent = 0.001 },
            new() { NominalPicofarads = 47_000, TolerancePercent = 5, Picofarads = 46_500, LossTangent = 0.003 },
        ],
    };

    public async Task<string?> AskAsync(string message) => await Meter.ExecuteAsync(message, CancellationToken.None);

    public Task<string?> FixtureAsync(string message) => bench.FixtureAsync(message);

    /// <summary>One reading, taken apart.</summary>
    public async Task<(double Picofarads, double Dissipation)> ReadAsync()
    {
        var fields = (await AskAsync("*TRG"))!.Split(',').Select(field => double.Parse(field, System.Globalization.CultureInfo.InvariantCulture));
        return fields.ToArray() is [var farads, var dissipation, 0] ? (farads * 1e12, dissipation) : throw new InvalidDataException("No reading.");
    }

    public async Task SetUpAsync()
    {
        await AskAsync("*RST;:FUNC:IMP CPD;:FREQ 1000;:CORR:OPEN:STAT ON;:TRIG:SOUR BUS");
        Assert.Equal("0,\"No error\"", await AskAsync("SYST:ERR?"));
    }

    public void Dispose() => bench.Dispose();
}
