using System.Numerics;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.CapacitanceMeter;

/// <summary>What is on the LCR meter's clips: the fixture's box, parts in parallel, or nothing.</summary>
internal sealed class CapacitanceClips(IReadOnlyList<PartDefinition> parts, SimulatedBench bench)
{
    private readonly Lock gate = new();
    private bool onFixture = true;
    private int[] clipped = [];
    private TaskCompletionSource shownEmpty = New();

    public int PartCount => parts.Count;

    /// <summary>The parts on the clips now.</summary>
    public IReadOnlyList<PartDefinition> Parts
    {
        get
        {
            lock (gate) return [.. clipped.Select(number => parts[number - 1])];
        }
    }

    /// <summary>Complete when the meter has taken a reading that saw nothing but empty clips since something was taken off.</summary>
    public Task ShownEmpty
    {
        get
        {
            lock (gate) return shownEmpty.Task;
        }
    }

    /// <summary>Puts parts, numbered from 1, on the clips.</summary>
    public void Put(IEnumerable<int> numbers)
    {
        lock (gate)
        {
            (onFixture, clipped) = (false, [.. numbers.Distinct().Where(number => number >= 1 && number <= parts.Count)]);
            shownEmpty = New();
        }
    }

    /// <summary>The meter begins a reading.</summary>
    /// <returns>What to call when it is over.</returns>
    public Action BeginReading()
    {
        lock (gate)
        {
            var (seen, empty) = (shownEmpty, !onFixture && clipped.Length == 0);
            return () =>
            {
                if (empty) seen.TrySetResult();
            };
        }
    }

    /// <summary>Takes everything off.</summary>
    public void TakeOff() => Put([]);

    /// <summary>The admittance between the clips now.</summary>
    public Complex Admittance(double omega)
    {
        lock (gate)
        {
            return onFixture
                ? bench.WithRelays((relays, _) => relays.Admittance(omega))
                : clipped.Select(number => parts[number - 1])
                    .Aggregate(Complex.Zero, (sum, part) => sum + (omega * part.Picofarads * 1e-12 * new Complex(part.LossTangent, 1)));
        }
    }

    private static TaskCompletionSource New() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
