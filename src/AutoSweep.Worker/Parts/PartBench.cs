using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Worker.Parts;

/// <summary>Where measured parts come from: an open capacitance meter, or a keyboard.</summary>
/// <param name="meter">The meter; none where values are typed.</param>
/// <param name="parts">The parts.</param>
public sealed class PartBench(ReturningInstrument<ICapacitanceMeter>? meter, IPartSource parts) : IAsyncDisposable
{
    private const string GoesOn = "What was taken in is written down; a part that was being read is read anew.";

    /// <summary>The parts as they come.</summary>
    public IPartSource Parts => parts;

    /// <summary>What to do, for whoever begins.</summary>
    public string Instruction => meter is null
        ? "No meter with a port: type each measured value and Enter, such as 104.5n. q ends."
        : $"{meter.Present.Identity} at {meter.Present.TestHertz:0} Hz. Put a part on its clips; one beep: take it off, the next. Ctrl-C ends.";

    /// <summary>Opens the meter that the wiring names.</summary>
    /// <param name="wiring">The bench.</param>
    /// <param name="typedAccuracyShare">The accuracy of typed values as a share.</param>
    /// <param name="rate">How much faster than real the bench's clock runs.</param>
    /// <param name="gaps">Where the person is told when the meter is lost in the middle of the work.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <param name="words">Takes typed lines that are words and no values.</param>
    /// <exception cref="Core.BenchFaultException">The meter cannot be reached, or is another.</exception>
    public static async Task<PartBench> OpenAsync(
        BenchWiring wiring, double typedAccuracyShare, double rate, IGapTeller gaps, CancellationToken cancellationToken, Func<string, bool>? words = null)
    {
        if (wiring.CapacitanceMeter is not { } resource)
            return new(null, new TypedParts(Console.In, Console.Out, typedAccuracyShare, words));
        var clock = RatedInstruments.Clock(rate);
        var options = RatedInstruments.Options(rate, clock, NullLoggerFactory.Instance, wiring.Drivers) with
        {
            CapacitanceMeterLeads = Core.Quantities.Capacitance.FromPicofarads(wiring.CapacitanceMeterLeadsPicofarads),
        };
        var place = InstrumentPlaces.CapacitanceMeter(resource, wiring.CapacitanceMeterDriver, options, GoesOn);
        var meter = new ReturningInstrument<ICapacitanceMeter>(await place.Open(cancellationToken), place, gaps, clock);
        return new(meter, new PausingParts(meter, new()));
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (meter is not null)
            await meter.DisposeAsync();
    }
}
