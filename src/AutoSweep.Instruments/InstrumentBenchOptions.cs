using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Links;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Instruments;

/// <summary>What the instruments of a bench share: clock, log, drivers, time-outs.</summary>
public sealed record InstrumentBenchOptions
{
    /// <summary>Where exchanges, retries and refused commands are logged.</summary>
    /// <value>Default: nowhere.</value>
    public ILoggerFactory LoggerFactory { get; init; } = NullLoggerFactory.Instance;

    /// <summary>The clock behind every wait and time-out.</summary>
    /// <value>Default: the machine's.</value>
    public TimeProvider Time { get; init; } = TimeProvider.System;

    /// <summary>Makes the opener of links, given the clock; the place to register further kinds of link.</summary>
    /// <value>Default: all kinds in docs/links.md.</value>
    public Func<TimeProvider, LinkOpener> Links { get; init; } = static time => new(time);

    /// <summary>Where meter drivers are found.</summary>
    /// <value>Default: the folder <c>drivers</c> beside the program.</value>
    public DriverLibrary Drivers { get; init; } = DriverLibrary.BesideProgram;

    /// <summary>Time-outs and retries, instead of those of the driver and the fixture protocol.</summary>
    /// <value>Default: none, the driver's own hold. A clock that runs faster than the wire needs longer ones.</value>
    public ExchangeOptions? Exchange { get; init; }

    /// <summary>After how long without a message the fixture opens every relay by itself.</summary>
    /// <value>Default 10 s: longer than any exchange with its retries, short enough that a killed program leaves no relay
    /// closed while somebody fetches a cup of coffee. 0 turns the watchdog off.</value>
    public TimeSpan FixtureWatchdog { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>The capacitance meter's leads, where the meter itself does not correct them; taken off every reading.</summary>
    /// <value>Default 0: the meter's own open correction, done at the clips that are used.</value>
    public Capacitance CapacitanceMeterLeads { get; init; }
}
