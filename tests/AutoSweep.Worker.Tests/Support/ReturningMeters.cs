using AutoSweep.Core;
using AutoSweep.Instruments.Meters;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Terminal;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>Capacitance meters that are found at one place, one opening after the other, and what the person is told meanwhile.</summary>
internal sealed class ReturningMeters
{
    public const string Resource = "GPIB0::17::INSTR";

    private readonly Queue<Func<ICapacitanceMeter>> _openings = [];

    public TimerSignals Clock { get; } = new();

    public List<string> Said { get; } = [];

    /// <summary>A link that broke, or silence.</summary>
    public static BenchFaultException Lost(BenchFault kind = BenchFault.NotReachable) =>
        new(kind, "the link broke", "a link that stays up", "look at the cable") { LostResource = Resource };

    public ReturningMeters Then(ICapacitanceMeter meter)
    {
        _openings.Enqueue(() => meter);
        return this;
    }

    public ReturningMeters ThenGone()
    {
        _openings.Enqueue(() => throw new BenchFaultException(BenchFault.NotReachable, "VI_ERROR_RSRC_NFOUND", "a meter", "look at its cable"));
        return this;
    }

    public ReturningInstrument<ICapacitanceMeter> Begin(ICapacitanceMeter first, IGapTeller? gaps = null) => new(
        first,
        new("capacitance meter", Resource, meter => meter.Identity.Serial, _ => Task.FromResult(_openings.Dequeue()()), "It is read anew."),
        gaps ?? new GapLines(Said.Add, Said.Add),
        Clock);

    /// <summary>Lets the waits pass until the work has ended.</summary>
    public async Task<T> PassAsync<T>(Task<T> work)
    {
        await Clock.PassUntilAsync(work);
        return await work;
    }
}
