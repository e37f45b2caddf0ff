using AutoSweep.Core;
using AutoSweep.Instruments.Links;

namespace AutoSweep.Worker.Bench;

/// <summary>Opens a bench, and where an instrument is not there yet, waits for it: a computer starts sooner than its bench is switched on.</summary>
/// <param name="board">Says what is missing.</param>
/// <param name="clock">The bench's clock.</param>
public sealed class BenchWait(BenchBoard board, TimeProvider clock)
{
    /// <summary>How long after a failed try the next one begins: found before the person has sat down (bench practice, no source).</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromSeconds(5);

    /// <summary>Opens the bench.</summary>
    /// <param name="wiring">How it is wired.</param>
    /// <param name="open">One try.</param>
    /// <param name="cancellationToken">Ends the waiting.</param>
    /// <exception cref="BenchFaultException">Waiting would not help: the wiring names no meter, or an instrument is another than it should be.</exception>
    public async Task<ConnectedBench> OpenAsync(
        BenchWiring wiring, Func<CancellationToken, Task<ConnectedBench>> open, CancellationToken cancellationToken)
    {
        while (true)
        {
            try
            {
                return await open(cancellationToken);
            }
            catch (BenchFaultException fault) when (IsAbsent(fault) && IsNamed(wiring))
            {
                board.Show(status => status with { Activity = BenchActivity.NeedsYou, Message = $"Waiting for the bench: {fault.Found}. {fault.WhatToDo}." });
            }

            await Task.Delay(Pause, clock, cancellationToken);
        }
    }

    private static bool IsAbsent(BenchFaultException fault) => fault.Kind is BenchFault.NotReachable or BenchFault.NoAnswer;

    // A slip in a name or a missing one is told at once: no waiting mends it.
    private static bool IsNamed(BenchWiring wiring) =>
        wiring.Meter is not null && wiring.Meter != wiring.Fixture && CanBeRead(wiring.Meter) && (wiring.Fixture is null || CanBeRead(wiring.Fixture));

    private static bool CanBeRead(string resource)
    {
        try
        {
            ResourceName.Parse(resource);
            return true;
        }
        catch (BenchFaultException)
        {
            return false;
        }
    }
}
