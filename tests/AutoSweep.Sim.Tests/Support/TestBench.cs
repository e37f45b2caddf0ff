using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Fixture;
using AutoSweep.Sim.Making;
using AutoSweep.Sim.Meter;
using AutoSweep.Sim.Physics;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Sim.Tests.Support;

/// <summary>A bench on a clock that the test moves; waits of the instruments pass at once.</summary>
internal sealed class TestBench : IDisposable
{
    /// <summary>So fast that no wait of an instrument is long enough for a timer.</summary>
    private const double Rate = 1e9;

    private readonly FakeTimeProvider real = new();

    public TestBench(Func<BenchDefinition, BenchDefinition>? change = null)
    {
        Definition = (change ?? (bench => bench))(Small());
        Clock = new(Rate, real);
        Bench = new(Definition, Profile, Clock);
        Meter = new(Definition.Meter, Bench);
        Fixture = new(Definition.Fixture, Bench);
    }

    public static GeneratorProfile Profile { get; } = GeneratorProfileLibrary.Open("invented-smallbench-14-60hz");

    public BenchDefinition Definition { get; }

    public SimulatedClock Clock { get; }

    public SimulatedBench Bench { get; }

    public MeterInstrument Meter { get; }

    public FixtureInstrument Fixture { get; }

    /// <summary>A bench without noise, hum, wobble and wander: what is read is what the network gives.</summary>
    public static BenchDefinition Quiet(BenchDefinition bench) => bench with
    {
        Mains = bench.Mains with { WanderPercent = 0 },
        WarmUp = bench.WarmUp with { StartPercent = 0 },
        FrontEnd = bench.FrontEnd with { NoiseMicrovolts = 0, OpenHumMillivolts = 0, ContactMillivolts = 0 },
        Meter = bench.Meter with
        {
            GainErrorPercent = 0, NoisePercentOfRange = 0, NoisePercentOfReading = 0, LowLevelErrorPercentOfRange = 0,
        },
        Outputs = [.. bench.Outputs.Select(output => output with { HumMillivolts = 0, WobblePercent = 0, Crosstalk = null })],
    };

    public static BenchDefinition Small() =>
        new BenchMaker(new() { Name = "test", Profile = "invented-smallbench-14-60hz", Seed = 3 }, Profile).Make().Bench;

    public Task PassAsync(double seconds) =>
        Clock.WaitUntilAsync(Clock.Now + TimeSpan.FromSeconds(seconds), CancellationToken.None).AsTask();

    public async Task<string?> MeterAsync(string message) => await Meter.ExecuteAsync(message, CancellationToken.None);

    public async Task<string?> FixtureAsync(string message) => await Fixture.ExecuteAsync(message, CancellationToken.None);

    public double Farads => Bench.WithRelays((relays, _) => relays.Farads);

    public void Dispose() => Meter.Dispose();
}
