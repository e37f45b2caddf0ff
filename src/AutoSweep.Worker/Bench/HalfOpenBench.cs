using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.ByHand;

namespace AutoSweep.Worker.Bench;

/// <summary>A bench whose instruments come back one by one: those that are there stay open while the others are waited for.</summary>
/// <param name="wiring">How the bench is wired.</param>
/// <param name="needsFixture">Whether the stages to come need the fixture.</param>
/// <param name="meterBefore">The meter of before; another one is not taken for it.</param>
/// <param name="options">Clock, log, time-outs.</param>
/// <param name="dialogue">The person, where the wiring says that one reads or dials.</param>
internal sealed class HalfOpenBench(
    BenchWiring wiring, bool needsFixture, InstrumentIdentity meterBefore, InstrumentBenchOptions options, IBenchDialogue dialogue) : IAsyncDisposable
{
    private ILevelMeter? _meter;
    private ICapacitanceFixture? _fixture;

    /// <summary>Opens what is not open yet.</summary>
    /// <returns>What is still missing; empty when the bench is whole.</returns>
    /// <exception cref="BenchFaultException">A fault that waiting does not mend: a relay that does not follow, a file that is gone.</exception>
    public async Task<IReadOnlyList<MissingInstrument>> OpenMissingAsync(CancellationToken cancellationToken)
    {
        List<MissingInstrument> missing = [];
        if (_meter is null && await FaultOfAsync(async () => _meter = await MeterAsync(cancellationToken)) is { } meter)
            missing.Add(new(BenchInstrument.Meter, wiring.Meter!, meter));
        if (_fixture is null && (needsFixture || wiring.Fixture is not null)
            && await FaultOfAsync(async () => _fixture = await ConnectedBench.OpenFixtureAsync(wiring, options, dialogue, cancellationToken)) is { } fixture)
            missing.Add(new(BenchInstrument.Fixture, wiring.Fixture!, fixture));
        return missing;
    }

    /// <summary>The whole bench; whoever takes it owns the instruments.</summary>
    public ConnectedBench Take()
    {
        var bench = new ConnectedBench(wiring, _meter!, _fixture);
        (_meter, _fixture) = (null, null);
        return bench;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_fixture is not null)
            await _fixture.DisposeAsync();
        if (_meter is not null)
            await _meter.DisposeAsync();
    }

    private static async Task<BenchFaultException?> FaultOfAsync(Func<Task> open)
    {
        try
        {
            await open();
            return null;
        }
        catch (BenchFaultException fault) when (Reopening.IsStillMissing(fault))
        {
            return fault;
        }
    }

    private async Task<ILevelMeter> MeterAsync(CancellationToken cancellationToken)
    {
        var meter = await ConnectedBench.OpenMeterAsync(wiring, options, dialogue, cancellationToken);
        // Firmware apart: an update between two gaps leaves the meter what it was.
        if (meter.Identity with { Firmware = "" } == meterBefore with { Firmware = "" })
            return meter;
        await meter.DisposeAsync();
        throw new BenchFaultException(
            BenchFault.WrongIdentity,
            $"{meter.Identity}",
            $"{meterBefore}, which took the readings of before",
            "connect that meter again; to go on with another, stop, then go on with the job") { AtTerminal = "--resume" };
    }
}
