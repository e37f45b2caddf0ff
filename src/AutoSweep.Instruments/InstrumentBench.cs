using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Instruments;

/// <summary>Opens the instruments of a bench, each in one call.</summary>
public static class InstrumentBench
{
    /// <summary>Opens a meter, checks its identity against the driver and sets it up.</summary>
    /// <param name="resource">A VISA resource name, or a plain port or <c>host:port</c>.</param>
    /// <param name="driverName">The name of a driver folder, such as <c>scpi-dmm</c>.</param>
    /// <param name="options">Clock, log, drivers, time-outs.</param>
    /// <param name="cancellationToken">Ends the attempt; the link is closed.</param>
    /// <exception cref="Core.BenchFaultException">No such driver or port, no answer, or the meter is another than the driver's.</exception>
    public static Task<ILevelMeter> OpenMeterAsync(
        string resource, string driverName, InstrumentBenchOptions options, CancellationToken cancellationToken) =>
        throw new NotImplementedException(resource);

    /// <summary>Opens a fixture, checks that the calibration is its own, opens every relay and starts the watchdog.</summary>
    /// <param name="resource">A VISA resource name, or a plain port or <c>host:port</c>.</param>
    /// <param name="calibrationFile">The path of the fixture's calibration file.</param>
    /// <param name="options">Clock, log, time-outs, watchdog.</param>
    /// <param name="cancellationToken">Ends the attempt; the link is closed.</param>
    /// <exception cref="Core.BenchFaultException">No such port or file, no answer, or a calibration of another fixture.</exception>
    public static Task<ICapacitanceFixture> OpenFixtureAsync(
        string resource, string calibrationFile, InstrumentBenchOptions options, CancellationToken cancellationToken) =>
        throw new NotImplementedException(resource);
}
