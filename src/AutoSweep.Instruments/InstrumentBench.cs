using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Instruments;

/// <summary>Opens the instruments of a bench, each in one call.</summary>
public static class InstrumentBench
{
    // In times of a query: 5 s for two lost SYN packets (RFC 6298 retransmits after 1 s and 2 s more).
    private const double ConnectTime = 2.5;

    /// <summary>Opens a meter, checks its identity against the driver and sets it up.</summary>
    /// <param name="resource">A VISA resource name, or a plain port or <c>host:port</c>.</param>
    /// <param name="driverName">The name of a driver folder, such as <c>scpi-dmm</c>.</param>
    /// <param name="options">Clock, log, drivers, time-outs.</param>
    /// <param name="cancellationToken">Ends the attempt; the link is closed.</param>
    /// <exception cref="Core.BenchFaultException">No such driver or port, no answer, or the meter is another than the driver's.</exception>
    public static async Task<ILevelMeter> OpenMeterAsync(
        string resource, string driverName, InstrumentBenchOptions options, CancellationToken cancellationToken)
    {
        var driver = options.Drivers.Read(driverName);
        if (driver.Level is null)
            throw driver.Lacks("level", "reads no level");
        var log = options.LoggerFactory.CreateLogger<ScpiLevelMeter>();
        var sessionOptions = MeterSessionOptions.Of(driver, options.Exchange);
        return await OpenAsync(
            resource, driver.Link.Serial, sessionOptions, options,
            async session => await ScpiLevelMeter.OpenAsync(session, driver, options.Time, log, cancellationToken),
            cancellationToken);
    }

    /// <summary>Opens a capacitance meter, checks its identity against the driver and sets it up.</summary>
    /// <param name="resource">A VISA resource name, or a plain port or <c>host:port</c>.</param>
    /// <param name="driverName">The name of a driver folder, such as <c>scpi-lcr</c>.</param>
    /// <param name="options">Clock, log, drivers, time-outs, the leads' capacitance.</param>
    /// <param name="cancellationToken">Ends the attempt; the link is closed.</param>
    /// <exception cref="Core.BenchFaultException">No such driver or port, a driver that measures no capacitance, no answer, or the meter
    /// is another than the driver's.</exception>
    public static async Task<ICapacitanceMeter> OpenCapacitanceMeterAsync(
        string resource, string driverName, InstrumentBenchOptions options, CancellationToken cancellationToken)
    {
        var driver = options.Drivers.Read(driverName);
        if (driver.Capacitance is null)
            throw driver.Lacks("capacitance", "measures no capacitance");
        var log = options.LoggerFactory.CreateLogger<ScpiCapacitanceMeter>();
        return await OpenAsync(
            resource, driver.Link.Serial, MeterSessionOptions.Of(driver, options.Exchange), options,
            async session => await ScpiCapacitanceMeter.OpenAsync(
                session, driver, options.CapacitanceMeterLeads, options.Time, log, cancellationToken),
            cancellationToken);
    }

    /// <summary>Opens a fixture whose calibration is not known or not to be used: explicit sets of relays.</summary>
    /// <param name="resource">A VISA resource name, or a plain port or <c>host:port</c>.</param>
    /// <param name="options">Clock, log, time-outs, watchdog.</param>
    /// <param name="cancellationToken">Ends the attempt; the link is closed.</param>
    /// <exception cref="Core.BenchFaultException">No such port, no answer, or a failed self-test.</exception>
    public static async Task<IRelayBox> OpenRelayBoxAsync(
        string resource, InstrumentBenchOptions options, CancellationToken cancellationToken)
    {
        var log = options.LoggerFactory.CreateLogger<ScpiRelayBox>();
        return await OpenAsync(
            resource, SerialSettings.Fixture, new() { Exchange = options.Exchange ?? new() }, options,
            async session => await ScpiRelayBox.OpenAsync(session, options.FixtureWatchdog, options.Time, log, cancellationToken),
            cancellationToken);
    }

    /// <summary>Opens a fixture, checks that the calibration is its own, opens every relay and starts the watchdog.</summary>
    /// <param name="resource">A VISA resource name, or a plain port or <c>host:port</c>.</param>
    /// <param name="calibrationFile">The path of the fixture's calibration file.</param>
    /// <param name="options">Clock, log, time-outs, watchdog.</param>
    /// <param name="cancellationToken">Ends the attempt; the link is closed.</param>
    /// <exception cref="Core.BenchFaultException">No such port or file, no answer, or a calibration of another fixture.</exception>
    public static async Task<ICapacitanceFixture> OpenFixtureAsync(
        string resource, string calibrationFile, InstrumentBenchOptions options, CancellationToken cancellationToken)
    {
        var calibration = FixtureCalibration.Read(calibrationFile);
        var log = options.LoggerFactory.CreateLogger<ScpiRelayFixture>();
        return await OpenAsync(
            resource, SerialSettings.Fixture, new() { Exchange = options.Exchange ?? new() }, options,
            async session => await ScpiRelayFixture.OpenAsync(session, calibration, options.FixtureWatchdog, options.Time, log,
                cancellationToken),
            cancellationToken);
    }

    /// <summary>Opens a link as a driver asks for it.</summary>
    /// <param name="resource">A VISA resource name, or a plain port or <c>host:port</c>.</param>
    /// <param name="driver">The driver.</param>
    /// <param name="options">Clock, time-outs.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <exception cref="Core.BenchFaultException">No such port, or nobody there.</exception>
    public static Task<ILink> OpenLinkAsync(
        string resource, MeterDriver driver, InstrumentBenchOptions options, CancellationToken cancellationToken) =>
        OpenLinkAsync(resource, driver.Link.Serial, MeterSessionOptions.Of(driver, options.Exchange), options, cancellationToken);

    /// <summary>Opens a session as a driver asks for it; nothing is sent yet.</summary>
    /// <param name="resource">A VISA resource name, or a plain port or <c>host:port</c>.</param>
    /// <param name="driver">The driver.</param>
    /// <param name="options">Clock, log, time-outs.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <exception cref="Core.BenchFaultException">No such port, or nobody there.</exception>
    public static async Task<ScpiSession> OpenSessionAsync(
        string resource, MeterDriver driver, InstrumentBenchOptions options, CancellationToken cancellationToken) => new(
        await OpenLinkAsync(resource, driver, options, cancellationToken), MeterSessionOptions.Of(driver, options.Exchange), options.Time,
        options.LoggerFactory.CreateLogger<ScpiSession>());

    private static Task<ILink> OpenLinkAsync(
        string resource, SerialSettings serial, ScpiSessionOptions sessionOptions, InstrumentBenchOptions options, CancellationToken cancellationToken)
    {
        var settings = new LinkSettings(serial)
        {
            ConnectTimeout = ConnectTime * sessionOptions.Exchange.QueryTimeout,
            ReplyTerminator = sessionOptions.ReplyTerminator,
        };
        return options.Links(options.Time).OpenAsync(ResourceName.Parse(resource), settings, cancellationToken);
    }

    private static async Task<TInstrument> OpenAsync<TInstrument>(
        string resource,
        SerialSettings serial,
        ScpiSessionOptions sessionOptions,
        InstrumentBenchOptions options,
        Func<ScpiSession, Task<TInstrument>> open,
        CancellationToken cancellationToken)
    {
        var link = await OpenLinkAsync(resource, serial, sessionOptions, options, cancellationToken);
        var session = new ScpiSession(link, sessionOptions, options.Time, options.LoggerFactory.CreateLogger<ScpiSession>());
        try
        {
            return await open(session);
        }
        catch
        {
            await session.DisposeAsync();
            throw;
        }
    }
}
