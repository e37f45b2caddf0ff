using System.Text.Json;
using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.CapacitanceMeter;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Fixture;
using AutoSweep.Sim.Hands;
using AutoSweep.Sim.Meter;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Wire;

namespace AutoSweep.Sim.Commands;

/// <summary>A bench with its wires open: meter, fixture and hands, until it is told to stop.</summary>
internal sealed class ServedBench : IDisposable
{
    private static readonly JsonSerializerOptions Lines = new(JsonSerializerDefaults.Web)
    {
        Converters = { new System.Text.Json.Serialization.JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
        DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull,
    };

    private readonly ServeOptions options;
    private readonly BenchDefinition bench;
    private readonly GeneratorProfile profile;
    private readonly MeterInstrument meter;
    private readonly TcpPort meterPort;
    private readonly TcpPort? fixturePort;
    private readonly PtyLine? fixtureLine;
    private readonly PtyPlug? fixturePlug;
    private readonly FixtureInstrument fixture;
    private readonly SimulatedClock clock;
    private readonly BenchHands hands;
    private readonly PartHands partHands;
    private readonly MagnetHands magnetHands;
    private readonly TcpPort capacitancePort;
    private readonly TextWriter output;

    public ServedBench(ServeOptions options, TextWriter output)
    {
        (this.options, this.output) = (options, TextWriter.Synchronized(output));
        var path = BenchLocator.Bench(options.Bench);
        var read = BenchFile.Read(path);
        bench = read with { Seed = options.Seed ?? read.Seed, Fixture = read.Fixture.Plant(options.RelayFaults) };
        var profilePath = BenchLocator.Profile(bench.Profile, Path.GetDirectoryName(path)!);
        profile = GeneratorProfileFile.Read(profilePath);
        clock = new(options.ClockRate);
        var simulated = new SimulatedBench(bench, profile, clock);
        meter = new MeterInstrument(bench.Meter, simulated);
        fixture = new(bench.Fixture, simulated);
        meterPort = new(meter, bench.Meter.Wire, clock, options.MeterPort);
        if (options.Pty && PtyLine.IsSupported && options.Unplugging) fixturePlug = new(fixture, clock);
        else if (options.Pty && PtyLine.IsSupported) fixtureLine = new();
        else fixturePort = new(fixture, new(), clock, 0);
        var ear = new BeepEar();
        meter.Beeped += ear.Hear;
        meter.Displayed += ear.Read;
        meterPort.Clients += ear.ClientsChanged;
        hands = new(bench.Hands, simulated, ear, Tell, bench.Seed + 2);
        magnetHands = new(bench.Hands, simulated, Tell, bench.Seed + 5);
        meter.Displayed += magnetHands.Read;
        var clips = new CapacitanceClips(bench.Parts, simulated);
        // Hands that will take parts in have taken the box off before: a worker that is there first must not take the box for a part.
        if (options.Hands.Any(phase => phase is HandsPhase.Parts or HandsPhase.Fit)) clips.TakeOff();
        var lcr = new CapacitanceMeterInstrument(bench.CapacitanceMeter, simulated, clips, bench.Seed + 3);
        capacitancePort = new(lcr, bench.CapacitanceMeter.Wire, clock, options.CapacitanceMeterPort);
        var lcrEar = new BeepEar();
        lcr.Beeped += lcrEar.Hear;
        capacitancePort.Clients += lcrEar.ClientsChanged;
        partHands = new(bench.Hands, clips, lcrEar, simulated, Tell, bench.Seed + 4);
        lcr.Displayed += partHands.Read;
        Ready = new(
            meterPort.Resource, FixtureResource, capacitancePort.Resource, BenchFile.CalibrationPath(path), profilePath, options.ClockRate,
            bench.FrontEnd.Gain, bench.Parts.Count);
    }

    public ReadyLine Ready { get; }

    private string FixtureResource => fixturePlug?.Resource ?? fixtureLine?.Resource ?? fixturePort!.Resource;

    /// <summary>Says that all is ready, then serves until it is cancelled.</summary>
    public async Task RunAsync(CancellationToken cancellationToken)
    {
        await Rehearsal.RunAsync(bench, profile);
        await output.WriteLineAsync(JsonSerializer.Serialize(Ready, Lines));
        await output.FlushAsync(cancellationToken);
        var ended = await Task.WhenAny(
            meterPort.RunAsync(cancellationToken), capacitancePort.RunAsync(cancellationToken), FixtureAsync(cancellationToken),
            HandsAsync(cancellationToken));
        if (!cancellationToken.IsCancellationRequested) await ended;
    }

    public void Dispose()
    {
        meterPort.Dispose();
        capacitancePort.Dispose();
        meter.Dispose();
        fixturePort?.Dispose();
        fixtureLine?.Dispose();
        fixturePlug?.Dispose();
    }

    /// <summary>Pulls the plug that a line names or pushes it in, or says what it should have been.</summary>
    public void Hear(string line)
    {
        if (UnplugOrder.Read(line) is not { } order)
        {
            Console.Error.WriteLine($"\"{line}\": expected {UnplugOrder.Expected}.");
            return;
        }

        if (order.Gap is { } gap) Unplug(order.What, gap);
        else PushIn(order.What);
    }

    private void Unplug(UnplugOrder.Plug what, TimeSpan gap)
    {
        if (what == UnplugOrder.Plug.Fixture && fixturePlug is { } plug) plug.Unplug(gap);
        else _ = PortOf(what)?.UnplugAsync(gap, CancellationToken.None);
    }

    private void PushIn(UnplugOrder.Plug what)
    {
        if (what == UnplugOrder.Plug.Fixture && fixturePlug is { } plug) plug.PushIn();
        else PortOf(what)?.PushIn();
    }

    private TcpPort? PortOf(UnplugOrder.Plug what) => what switch
    {
        UnplugOrder.Plug.Meter => meterPort,
        UnplugOrder.Plug.CapacitanceMeter => capacitancePort,
        _ => fixturePort,
    };

    private Task FixtureAsync(CancellationToken cancellationToken) => fixturePlug is { } plug ? plug.RunAsync(cancellationToken)
        : fixtureLine is { } line
        ? new Conversation(line, fixture, new(line, new(), clock)).RunAsync(cancellationToken)
        : fixturePort!.RunAsync(cancellationToken);

    // The hands come to their script's end; the bench stays until it is told to stop.
    private async Task HandsAsync(CancellationToken cancellationToken)
    {
        foreach (var (index, phase) in options.Hands.Index())
        {
            if (index > 0) await Task.Delay(BenchHands.BetweenPhases, clock, cancellationToken);
            var last = index == options.Hands.Count - 1;
            await (phase switch
            {
                HandsPhase.Parts or HandsPhase.Fit => partHands.RunAsync(phase, last, cancellationToken),
                HandsPhase.Level => magnetHands.RunAsync(last, cancellationToken),
                _ => hands.RunAsync([phase], cancellationToken),
            });
        }

        await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, cancellationToken);
    }

    private void Tell(HandsEvent what)
    {
        if (!options.Events) return;
        output.WriteLine(JsonSerializer.Serialize(what, Lines));
        output.Flush();
    }
}
