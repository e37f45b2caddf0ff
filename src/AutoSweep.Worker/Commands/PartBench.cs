using AutoSweep.Instruments;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Parts;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Worker.Commands;

/// <summary>Where measured parts come from: an open capacitance meter, or a keyboard.</summary>
/// <param name="meter">The meter; none where values are typed.</param>
/// <param name="parts">The parts.</param>
public sealed class PartBench(ICapacitanceMeter? meter, IPartSource parts) : IAsyncDisposable
{
    /// <summary>The parts as they come.</summary>
    public IPartSource Parts => parts;

    /// <summary>What to do, for whoever begins.</summary>
    public string Instruction => meter is null
        ? "No meter with a port: type each measured value and Enter, such as 104.5n. q ends."
        : $"{meter.Identity} at {meter.TestHertz:0} Hz. Put a part on its clips; one beep: take it off, the next. Ctrl-C ends.";

    /// <summary>Opens the meter that the wiring names.</summary>
    /// <param name="wiring">The bench.</param>
    /// <param name="typedAccuracyShare">The accuracy of typed values as a share.</param>
    /// <param name="rate">How much faster than real the bench's clock runs.</param>
    /// <param name="cancellationToken">Ends the attempt.</param>
    /// <exception cref="Core.BenchFaultException">The meter cannot be reached, or is another.</exception>
    public static async Task<PartBench> OpenAsync(BenchWiring wiring, double typedAccuracyShare, double rate, CancellationToken cancellationToken)
    {
        if (wiring.CapacitanceMeter is not { } resource)
            return new(null, new TypedParts(Console.In, Console.Out, typedAccuracyShare));
        var options = RatedInstruments.Options(rate, RatedInstruments.Clock(rate), NullLoggerFactory.Instance, wiring.Drivers) with
        {
            CapacitanceMeterLeads = Core.Quantities.Capacitance.FromPicofarads(wiring.CapacitanceMeterLeadsPicofarads),
        };
        var meter = await InstrumentBench.OpenCapacitanceMeterAsync(resource, wiring.CapacitanceMeterDriver, options, cancellationToken);
        return new(meter, new PartWatch(meter, new()));
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (meter is not null)
            await meter.DisposeAsync();
    }
}
