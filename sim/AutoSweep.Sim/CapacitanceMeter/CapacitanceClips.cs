using System.Numerics;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.CapacitanceMeter;

/// <summary>What is on the LCR meter's clips: the fixture's box, parts in parallel, a capacitor that came off an output, or nothing.</summary>
internal sealed class CapacitanceClips(IReadOnlyList<PartDefinition> parts, SimulatedBench bench)
{
    private readonly Lock gate = new();
    private bool onFixture = true;
    private PartDefinition[] clipped = [];
    private AgedCapacitorDefinition? old;
    private TaskCompletionSource shownEmpty = New();

    public int PartCount => parts.Count;

    /// <summary>The parts out of the drawer that are on the clips now.</summary>
    public IReadOnlyList<PartDefinition> Parts
    {
        get
        {
            lock (gate) return [.. clipped];
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
    public void Put(IEnumerable<int> numbers) => Put(numbers.Distinct().Where(number => number >= 1 && number <= parts.Count).Select(number => parts[number - 1]));

    /// <summary>Puts the capacitor on the clips that came off an output; nothing where there was none.</summary>
    public void PutOld(int output) => Put([], bench.TakeOff(output));

    /// <summary>The meter begins a reading.</summary>
    /// <returns>What to call when it is over.</returns>
    public Action BeginReading()
    {
        lock (gate)
        {
            var (seen, empty) = (shownEmpty, !onFixture && clipped.Length == 0 && old is null);
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
                : clipped.Select(part => (part.Picofarads, part.LossTangent)).Concat(old is null ? [] : [(old.Picofarads, old.LossTangent)])
                    .Aggregate(Complex.Zero, (sum, part) => sum + (omega * part.Picofarads * 1e-12 * new Complex(part.LossTangent, 1)));
        }
    }

    private void Put(IEnumerable<PartDefinition> taken, AgedCapacitorDefinition? removed = null)
    {
        lock (gate)
        {
            (onFixture, clipped, old) = (false, [.. taken], removed);
            shownEmpty = New();
        }
    }

    private static TaskCompletionSource New() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
