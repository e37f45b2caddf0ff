using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.ByHand;

namespace AutoSweep.Worker.Bench;

/// <summary>The opened instruments of a bench. Disposing it opens every relay and closes the links.</summary>
public sealed class ConnectedBench : IAsyncDisposable
{
    // A computer sleeps or is held up once; a box that lets go every time is broken.
    private const int Attempts = 3;

    private readonly BenchWiring _wiring;
    private readonly ICapacitanceFixture? _fixture;

    /// <summary>A bench of instruments that are open already; owned by the bench from now on.</summary>
    /// <param name="wiring">How they are wired.</param>
    /// <param name="meter">The meter.</param>
    /// <param name="fixture">The fixture, or none.</param>
    public ConnectedBench(BenchWiring wiring, ILevelMeter meter, ICapacitanceFixture? fixture) =>
        (_wiring, Meter, _fixture) = (wiring, meter, fixture);

    /// <summary>The meter.</summary>
    public ILevelMeter Meter { get; }

    /// <summary>The fixture.</summary>
    /// <exception cref="BenchFaultException">The bench has none.</exception>
    public ICapacitanceFixture Fixture => _fixture ?? throw new BenchFaultException(
        BenchFault.NotReachable,
        "no fixture in the bench's wiring",
        "a fixture for a sweep",
        "write both into the bench's wiring") { AtTerminal = "--fixture and --calibration, or in bench.json" };

    /// <summary>Whether the bench has a fixture.</summary>
    public bool HasFixture => _fixture is not null;

    /// <summary>Gain of the front-end amplifier; 1 without one.</summary>
    public double AmplifierGain => _wiring.AmplifierGain;

    /// <summary>How long to wait for the AC detector after a change.</summary>
    public TimeSpan Settling => _wiring.SettleSeconds is { } seconds ? TimeSpan.FromSeconds(seconds) : Meter.Settling;

    /// <summary>The box, where a person dials it; none where relays set the capacitance.</summary>
    public IDialledBox? Dialled => _fixture as IDialledBox;

    /// <summary>Whether a person dials or types levels.</summary>
    public bool IsTyped => Dialled is not null || Meter is IEyeReadMeter;

    /// <summary>Opens and checks the instruments.</summary>
    /// <param name="wiring">How the bench is wired.</param>
    /// <param name="needsFixture">Whether the stages to come need the fixture.</param>
    /// <param name="options">Clock, log, time-outs.</param>
    /// <param name="dialogue">The person, where the wiring says that one reads or dials.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <exception cref="BenchFaultException">Something is missing, silent or another than it should be.</exception>
    public static async Task<ConnectedBench> OpenAsync(
        BenchWiring wiring, bool needsFixture, InstrumentBenchOptions options, IBenchDialogue dialogue, CancellationToken cancellationToken)
    {
        if (wiring.Meter is not null && string.Equals(wiring.Meter, wiring.Fixture, StringComparison.OrdinalIgnoreCase))
            throw SamePort(wiring.Meter);
        var meter = await OpenMeterAsync(wiring, options, dialogue, cancellationToken);
        try
        {
            var fixture = needsFixture || wiring.Fixture is not null ? await OpenFixtureAsync(wiring, options, dialogue, cancellationToken) : null;
            return new(wiring, meter, fixture);
        }
        catch
        {
            await meter.DisposeAsync();
            throw;
        }
    }

    /// <summary>What the journal keeps of the bench.</summary>
    public BenchConnected Describe() => WithCalibration(new()
    {
        MeterResource = _wiring.Meter!,
        MeterIdentity = Meter.Identity.ToString(),
        MeterDriver = _wiring.IsReadByEye ? BenchWiring.ByEye : _wiring.MeterDriver,
        AmplifierGain = AmplifierGain,
        FixtureResource = _wiring.Fixture,
        FixtureSerial = _fixture?.Serial,
        StrayPicofarads = _fixture?.Smallest.Picofarads,
    });

    /// <summary>A fault of the meter, with its name in it.</summary>
    public BenchFaultException MeterFault(string found, string expected) => new(
        BenchFault.NoAnswer,
        $"the meter {_wiring.Meter} gives {found}",
        expected,
        "check the meter's input, range and cable, then go on") { AtTerminal = "--resume" };

    /// <summary>Sets a capacitance and reads or listens with it in circuit, for certain: a computer that was held up for longer than the fixture's watchdog
    /// waits has read with every relay open, and does it anew.</summary>
    /// <param name="wanted">The capacitance; none leaves it as it is.</param>
    /// <param name="work">What is done with it in circuit; may be done several times.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <exception cref="BenchFaultException">The fixture opens its relays every time, or does not do as told.</exception>
    public async Task<(Capacitance Set, TResult Result)> WithSetAsync<TResult>(
        Capacitance? wanted, Func<Task<TResult>> work, CancellationToken cancellationToken)
    {
        for (var attempt = 1; attempt <= Attempts; attempt++)
        {
            var set = wanted is { } capacitance ? await Fixture.SetAsync(capacitance, cancellationToken) : default;
            var result = await work();
            if (await Fixture.StandsAsync(cancellationToken))
                return (set, result);
        }

        throw FallsOpen();
    }

    /// <summary>Opens every relay, lets go of the instruments.</summary>
    public async ValueTask DisposeAsync()
    {
        try
        {
            if (_fixture is not null)
                await _fixture.DisposeAsync();
        }
        finally
        {
            await Meter.DisposeAsync();
        }
    }

    private BenchFaultException FallsOpen() => new(
        BenchFault.FixtureFault,
        string.Create(CultureInfo.InvariantCulture, $"the fixture {_wiring.Fixture} opened its relays by itself during {Attempts} readings in a row"),
        "relays that stay closed while a level is read",
        "check the fixture's supply and its watchdog, then go on") { AtTerminal = "--resume" };

    // Kept in the record, because the file is replaced by the next calibration.
    private BenchConnected WithCalibration(BenchConnected bench) =>
        _fixture is null || _wiring.Calibration is not { } path || !File.Exists(path) || FixtureCalibration.Read(path) is not { } calibration ? bench
        : bench with
        {
            FixtureCalibrated = calibration.Date,
            FixtureCalibratedWith = calibration.Meter,
            FixtureRelativeUncertainty = calibration.RelativeStandardUncertainty,
        };

    /// <summary>Opens and checks the meter of a wiring.</summary>
    /// <exception cref="BenchFaultException">It is missing, silent or another than it should be.</exception>
    internal static Task<ILevelMeter> OpenMeterAsync(
        BenchWiring wiring, InstrumentBenchOptions options, IBenchDialogue dialogue, CancellationToken cancellationToken) => wiring.IsReadByEye
        ? Task.FromResult<ILevelMeter>(new EyeReadMeter(dialogue, wiring.Eye))
        : InstrumentBench.OpenMeterAsync(wiring.Meter ?? throw Unwired("meter", "--meter"), wiring.MeterDriver, options, cancellationToken);

    /// <summary>Opens and checks the fixture of a wiring.</summary>
    /// <exception cref="BenchFaultException">It is missing, silent, another than its calibration's, or does not do as told.</exception>
    internal static Task<ICapacitanceFixture> OpenFixtureAsync(
        BenchWiring wiring, InstrumentBenchOptions options, IBenchDialogue dialogue, CancellationToken cancellationToken) => wiring.IsDialledByHand
        ? Task.FromResult<ICapacitanceFixture>(new HandDialledBox(wiring.Box ?? throw NoBox(), dialogue))
        : InstrumentBench.OpenFixtureAsync(
            wiring.Fixture ?? throw Unwired("fixture", "--fixture"),
            wiring.Calibration ?? throw Unwired("calibration of the fixture", "--calibration"),
            options,
            cancellationToken);

    private static BenchFaultException NoBox() => new(
        BenchFault.NotReachable,
        "a box that is dialled by hand, but not what it can be dialled to",
        "its dials under \"box\" in bench.json",
        "describe the box in the bench's wiring; docs/by-hand.md has an example") { AtTerminal = "--bench with a bench.json" };

    private static BenchFaultException SamePort(string port) => new(
        BenchFault.NotReachable,
        $"meter and fixture both at {port}",
        "a port for each",
        "give each its own resource name") { AtTerminal = "--meter, --fixture" };

    private static BenchFaultException Unwired(string what, string flag) => new(
        BenchFault.NotReachable,
        $"no {what} in the bench's wiring",
        $"a {what}",
        "write it into the bench's wiring") { AtTerminal = $"{flag}, or --bench with a bench.json that has it" };
}
