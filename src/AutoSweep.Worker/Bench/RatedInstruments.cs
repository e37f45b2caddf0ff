using AutoSweep.Instruments;
using Microsoft.Extensions.Logging;

namespace AutoSweep.Worker.Bench;

/// <summary>Clock and time-outs of the instruments of a bench whose clock may run faster than real.</summary>
public static class RatedInstruments
{
    /// <summary>The clock of a rate; the machine's own for 1.</summary>
    public static TimeProvider Clock(double rate) => rate > 1 ? new AcceleratedTimeProvider(rate) : TimeProvider.System;

    /// <summary>The instruments' options. Where bench seconds fly, the wire still takes wall seconds: time-outs and the watchdog are
    /// stretched to match.</summary>
    /// <param name="rate">How many bench seconds pass in one wall second; 1 on a real bench.</param>
    /// <param name="clock">The clock of that rate.</param>
    /// <param name="logs">Where exchanges are logged.</param>
    /// <param name="drivers">A folder of further meter drivers, or none.</param>
    public static InstrumentBenchOptions Options(double rate, TimeProvider clock, ILoggerFactory logs, string? drivers = null)
    {
        var options = new InstrumentBenchOptions { LoggerFactory = logs, Time = clock, Drivers = MeterDrivers.Library(drivers) };
        return rate > 1
            ? options with
            {
                Exchange = new()
                {
                    QueryTimeout = TimeSpan.FromSeconds(2 * rate),
                    QuietTime = TimeSpan.FromSeconds(0.1 * rate),
                    QuietLimit = TimeSpan.FromSeconds(2 * rate),
                },
                FixtureWatchdog = TimeSpan.FromSeconds(Math.Ceiling(rate)),
            }
            : options;
    }
}
