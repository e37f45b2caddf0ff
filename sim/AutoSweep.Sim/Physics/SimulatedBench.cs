using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Fixture;

namespace AutoSweep.Sim.Physics;

/// <summary>Everything on the bench that time acts on: mains, wheels, clip, relays and the meter's detector.</summary>
/// <remarks>
/// Nothing runs by itself: each question first brings the bench to the time that is asked about, change by change. Safe to use
/// from the meter's, the fixture's and the hands' threads at once.
/// </remarks>
internal sealed class SimulatedBench
{
    private readonly Lock gate = new();
    private readonly BenchDefinition bench;
    private readonly GeneratorModel generator;
    private readonly MainsWander mains;
    private readonly LevelDetector detector = new();
    private readonly HashSet<int> removed = [];
    private readonly SortedDictionary<int, FittedCapacitor> soldered = [];
    private Connection connection = Connection.Open;
    private TimeSpan at;
    private TimeSpan disturbedAt;
    private (TimeSpan At, InputSignal Signal)? known;
    private double? dialled;

    public SimulatedBench(BenchDefinition bench, GeneratorProfile profile, SimulatedClock clock)
    {
        (this.bench, Clock) = (bench, clock);
        generator = new(bench, profile);
        mains = new(bench.Mains, bench.Seed);
        Relays = new(bench.Fixture);
        Random = new(bench.Seed + 1);
    }

    public SimulatedClock Clock { get; }

    /// <summary>The seeded noise of readings. Only inside <see cref="Look"/>.</summary>
    public Random Random { get; }

    private RelayBank Relays { get; }

    /// <summary>Clips a terminal, and the fixture in the place of its capacitor, which comes off for good.</summary>
    public void Clip(int output, bool withFixture)
    {
        lock (gate)
        {
            AdvanceTo(Clock.Now);
            var filtered = generator.Output(output).Filter is not null;
            if (withFixture && filtered) removed.Add(output);
            Connect(new(output, withFixture && filtered));
        }
    }

    /// <summary>Takes the capacitor off a terminal's filter for good, if it is not off yet.</summary>
    /// <returns>That capacitor; none where there is no filter.</returns>
    public AgedCapacitorDefinition? TakeOff(int output)
    {
        if (!generator.HasFilter(output)) return null;
        lock (gate)
        {
            AdvanceTo(Clock.Now);
            if (removed.Add(output)) known = null;
            return generator.Output(output).Aged;
        }
    }

    /// <summary>The terminals that parts are soldered in at, ascending.</summary>
    public IReadOnlyList<int> Soldered
    {
        get
        {
            lock (gate) return [.. soldered.Keys];
        }
    }

    /// <summary>Solders parts in, in parallel, in the place of what was in a terminal's filter.</summary>
    /// <remarks>Where there is no filter, or no part, nothing happens.</remarks>
    public void Solder(int output, IReadOnlyCollection<PartDefinition> parts)
    {
        if (parts.Count == 0 || !generator.HasFilter(output)) return;
        lock (gate)
        {
            AdvanceTo(Clock.Now);
            soldered[output] = FittedCapacitor.Parallel(parts);
            known = null;
        }
    }

    /// <summary>Pushes an output's magnet rod while its set screw is loose.</summary>
    /// <param name="output">The output; of one without a rod nothing moves.</param>
    /// <param name="millimetres">Outward; below 0 is towards the wheel.</param>
    /// <returns>Whether it has met the wheel just now.</returns>
    public bool PushRod(int output, double millimetres) => WithRod(output, rod => rod.Push(millimetres));

    /// <summary>Locks an output's magnet rod, which shifts it.</summary>
    /// <returns>Whether it has met the wheel just now.</returns>
    public bool LockRod(int output, double further) => WithRod(output, rod => rod.Lock(further));

    public void Unclip()
    {
        lock (gate)
        {
            AdvanceTo(Clock.Now);
            Connect(Connection.Open);
        }
    }

    /// <summary>Puts a box that is dialled by hand in the fixture's place, from now on.</summary>
    public void Dial(double farads)
    {
        lock (gate)
        {
            AdvanceTo(Clock.Now);
            (dialled, known) = (farads, null);
            if (connection.Fixture) disturbedAt = at;
        }
    }

    /// <summary>Works on the relays at the present time.</summary>
    public T WithRelays<T>(Func<RelayBank, TimeSpan, T> work)
    {
        lock (gate)
        {
            AdvanceTo(Clock.Now);
            known = null;
            return work(Relays, at);
        }
    }

    /// <summary>Works on the detector at the present time: a change of filter, range or function.</summary>
    public void WithDetector(Action<LevelDetector> work)
    {
        lock (gate)
        {
            AdvanceTo(Clock.Now);
            work(detector);
        }
    }

    /// <summary>Looks at the meter's input at a time, which must not lie before what has been looked at already.</summary>
    public T Look<T>(TimeSpan time, Func<BenchView, T> look)
    {
        lock (gate)
        {
            AdvanceTo(time);
            return look(new(at, Signal(at), detector.Volts, detector.TimeConstantSeconds, at - disturbedAt, Random));
        }
    }

    private bool WithRod(int output, Action<MagnetRodState> work)
    {
        lock (gate)
        {
            AdvanceTo(Clock.Now);
            if (generator.RodOf(output) is not { Touched: false } rod) return false;
            work(rod);
            return rod.Touched;
        }
    }

    private void Connect(Connection to)
    {
        connection = to;
        known = null;
        disturbedAt = at;
        detector.Kick(bench.FrontEnd.ContactMillivolts * 1e-3 * bench.FrontEnd.Gain);
    }

    private void AdvanceTo(TimeSpan time)
    {
        while (Relays.NextChange(time) is { } change)
        {
            Follow(change);
            Relays.Take(change);
            known = null;
            if (connection.Fixture) disturbedAt = at;
        }

        Follow(time);
    }

    private void Follow(TimeSpan time)
    {
        if (time <= at) return;
        at = time;
        detector.Follow(Signal(time).Volts, time);
    }

    // The networks are solved once for a time, however often it is asked about.
    private InputSignal Signal(TimeSpan time)
    {
        if (known?.At != time) known = (time, Solve(time));
        return known.Value.Signal;
    }

    private InputSignal Solve(TimeSpan time)
    {
        var hertz = mains.HertzAt(time);
        var signal = connection.Output is { } output ? Clipped(output, new(hertz, WarmUp(time), mains.PeriodsUntil(time))) : OpenClip(hertz);
        return signal.Amplified(bench.FrontEnd.Gain);
    }

    private InputSignal Clipped(int terminal, GeneratorModel.Conditions now)
    {
        var number = generator.WiredTo(terminal);
        if (connection.Fixture)
            return generator.At(terminal, dialled ?? Relays.Farads, bench.Fixture.LossTangent, now);
        if (soldered.TryGetValue(terminal, out var fitted)) return generator.At(terminal, fitted.Farads, fitted.LossTangent, now);
        return generator.Output(number).Aged is { } aged && !removed.Contains(number)
            ? generator.At(terminal, aged.Picofarads * 1e-12, aged.LossTangent, now)
            : generator.At(terminal, 0, 0, now);
    }

    private InputSignal OpenClip(double mainsHertz) => new()
    {
        HumVolts = bench.FrontEnd.OpenHumMillivolts * 1e-3,
        HumHertz = mainsHertz,
        NoiseVolts = bench.FrontEnd.NoiseMicrovolts * 1e-6,
    };

    private double WarmUp(TimeSpan time) =>
        1 + (bench.WarmUp.StartPercent / 100 * Math.Exp(-time.TotalSeconds / bench.WarmUp.Seconds));
}
