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

    public int PartCount => parts.Count;

    /// <summary>The parts on the clips now.</summary>
    public IReadOnlyList<PartDefinition> Parts
    {
        get
        {
            lock (gate) return [.. clipped.Select(number => parts[number - 1])];
        }
    }

    /// <summary>Puts parts, numbered from 1, on the clips.</summary>
    public void Put(IEnumerable<int> numbers)
    {
        lock (gate) (onFixture, clipped) = (false, [.. numbers.Distinct().Where(number => number >= 1 && number <= parts.Count)]);
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
}
