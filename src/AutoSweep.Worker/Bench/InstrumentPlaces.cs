using AutoSweep.Instruments;
using AutoSweep.Instruments.Fixture;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Worker.Bench;

/// <summary>The places of the instruments that work outside a job's stages.</summary>
internal static class InstrumentPlaces
{
    /// <summary>A capacitance meter.</summary>
    /// <param name="resource">Its resource name.</param>
    /// <param name="driver">Its driver.</param>
    /// <param name="options">Clock, log, time-outs.</param>
    /// <param name="goesOn">What the person is told when it is back.</param>
    // Firmware apart: an update in a gap leaves the meter what it was.
    public static InstrumentPlace<ICapacitanceMeter> CapacitanceMeter(
        string resource, string driver, InstrumentBenchOptions options, string goesOn) => new(
        "capacitance meter", resource, meter => $"{meter.Identity.Maker},{meter.Identity.Model},{meter.Identity.Serial}",
        cancel => InstrumentBench.OpenCapacitanceMeterAsync(resource, driver, options, cancel), goesOn);

    /// <summary>A fixture taken as a box of relays.</summary>
    /// <param name="resource">Its resource name.</param>
    /// <param name="options">Clock, log, time-outs.</param>
    /// <param name="goesOn">What the person is told when it is back.</param>
    public static InstrumentPlace<IRelayBox> RelayBox(string resource, InstrumentBenchOptions options, string goesOn) => new(
        "fixture", resource, box => $"fixture {box.Serial} with {box.RelayCount} relays", cancel => InstrumentBench.OpenRelayBoxAsync(resource, options, cancel), goesOn);
}
