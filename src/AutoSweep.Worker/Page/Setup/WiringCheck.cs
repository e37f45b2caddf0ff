using System.Collections.Immutable;
using AutoSweep.Core;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Page.Work;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>Checks the wires of the bench one after the other; one that is not good does not keep the others from being checked.</summary>
/// <param name="wiring">How the bench is wired.</param>
/// <param name="clockRate">How many times faster than the wall clock the bench's clock runs.</param>
/// <param name="logs">The log.</param>
public sealed class WiringCheck(BenchWiring wiring, double clockRate, ILoggerFactory logs) : DeskWork
{
    private readonly TimeProvider _clock = RatedInstruments.Clock(clockRate);

    /// <inheritdoc/>
    public override string Name => "Check of the wires";

    /// <inheritdoc/>
    public override string? Place => "wiring";

    /// <summary>bench.json as it stood: once another wiring is kept, the check says nothing of it.</summary>
    public string Written { get; init; } = "";

    /// <summary>The wires that are checked already.</summary>
    public ImmutableList<WireResult> Results { get; private set; } = [];

    /// <summary>The wire that is looked at now; none when all are done.</summary>
    public string? Looking { get; private set; }

    /// <inheritdoc/>
    protected override async Task WorkAsync(CancellationToken cancellationToken)
    {
        var options = RatedInstruments.Options(clockRate, _clock, logs, wiring.Drivers) with
        {
            CapacitanceMeterLeads = Capacitance.FromPicofarads(wiring.CapacitanceMeterLeadsPicofarads),
        };
        await LookAsync("Meter", () => MeterAsync(options, cancellationToken));
        await LookAsync("Fixture", () => FixtureAsync(options, cancellationToken));
        await LookAsync("Capacitance meter", () => CapacitanceMeterAsync(options, cancellationToken));
        Looking = null;
        Board.Sound(Results.Any(result => result.Verdict == WireVerdict.NotGood) ? BenchSound.Question : BenchSound.Done);
    }

    private async Task LookAsync(string wire, Func<Task> look)
    {
        Looking = wire;
        Tell();
        try
        {
            await look();
        }
        catch (BenchFaultException fault)
        {
            Add(WireResult.Of(wire, fault));
        }
    }

    private async Task MeterAsync(InstrumentBenchOptions options, CancellationToken cancellationToken)
    {
        if (wiring.IsReadByEye)
        {
            Add(new("Meter", WireVerdict.NoWire, $"{wiring.Eye.Name}: a person reads it and types", "nothing to check"));
            return;
        }

        await using var meter = await ConnectedBench.OpenMeterAsync(wiring, options, Dialogue, cancellationToken);
        Add(await WireChecks.ReadsAsync(meter, cancellationToken));
        var settling = wiring.SettleSeconds is { } seconds ? TimeSpan.FromSeconds(seconds) : meter.Settling;
        await LookAsync(OpenInput.Wire, async () =>
            Add(await WireChecks.IsQuietAsync(meter, wiring.AmplifierGain, settling, _clock, cancellationToken)));
    }

    private async Task FixtureAsync(InstrumentBenchOptions options, CancellationToken cancellationToken)
    {
        if (wiring.IsDialledByHand || wiring.Fixture is null)
        {
            Add(wiring.Box is { } dials && wiring.IsDialledByHand
                ? new("Fixture", WireVerdict.NoWire, $"{dials.Name}: a person dials it, {dials.Smallest} to {dials.Largest}", "nothing to check")
                : new("Fixture", WireVerdict.NoWire, "no fixture on this bench: a survey needs none, a sweep does", "nothing to check"));
            return;
        }

        await using var box = await InstrumentBench.OpenRelayBoxAsync(wiring.Fixture, options, cancellationToken);
        await LookAsync("Calibration", () =>
        {
            Add(wiring.Calibration is { } file ? WireChecks.Belongs(FixtureCalibration.Read(file), box) : NoCalibration(box));
            return Task.CompletedTask;
        });
        Looking = "Fixture";
        Add(await WireChecks.FollowsAsync(box, cancellationToken));
    }

    private async Task CapacitanceMeterAsync(InstrumentBenchOptions options, CancellationToken cancellationToken)
    {
        if (wiring.CapacitanceMeter is not { } resource)
        {
            Add(new("Capacitance meter", WireVerdict.NoWire, "no capacitance meter with a port: values are typed", "nothing to check"));
            return;
        }

        await using var meter = await InstrumentBench.OpenCapacitanceMeterAsync(resource, wiring.CapacitanceMeterDriver, options, cancellationToken);
        Add(await WireChecks.MeasuresAsync(meter, cancellationToken));
    }

    private static WireResult NoCalibration(IRelayBox box) => new(
        "Calibration", WireVerdict.NotGood, "no calibration file is chosen", $"the calibration of box {box.Serial}",
        "Choose or upload the file above, or calibrate the box: autosweep fixture calibrate.");

    private void Add(WireResult result)
    {
        Results = Results.Add(result);
        Tell();
    }
}
