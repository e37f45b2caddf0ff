using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Making;

/// <summary>Draws faults of different kinds for one generator, each at an output of its own.</summary>
/// <remarks>The sizes are invented; each begins where the trade would begin to speak of a fault and ends where nobody could miss it.</remarks>
internal sealed class FaultDraw(GeneratorProfile profile, Random random)
{
    /// <summary>What is drawn from; a mains and a motor that are off are one kind, the speed.</summary>
    public const int Kinds = 11;

    private readonly HashSet<int> taken = [];

    /// <summary>So many different kinds, 0 to 11.</summary>
    public IReadOnlyList<PlantedFault> Draw(int kinds)
    {
        int[] order = [.. Enumerable.Range(0, Kinds)];
        random.Shuffle(order);
        return [.. order.Take(kinds).Select(Draw1)];
    }

    private PlantedFault Draw1(int kind) => kind switch
    {
        0 => new() { Kind = FaultKind.Dead, Output = Any() },
        1 => Swapped(),
        2 => new() { Kind = FaultKind.CapacitorDrifted, Output = Filtered(), Size = Math.Round(1.02 + (1.2 * Math.Pow(Between(0, 1), 2)), 3) },
        3 => new() { Kind = FaultKind.CapacitorOpen, Output = Filtered(), Size = Math.Round(Between(5, 300)) },
        4 => new() { Kind = FaultKind.CapacitorLeaky, Output = Filtered(), Size = Math.Round(Between(0.06, 0.5), 3) },
        5 => new() { Kind = FaultKind.WeakMagnet, Output = Any(), Size = -Math.Round(Between(4, 12), 2) },
        6 => new() { Kind = FaultKind.StrongMagnet, Output = Any(), Size = Math.Round(Between(4, 9), 2) },
        7 => new() { Kind = FaultKind.UnsteadyWheel, Output = Any(), Size = Math.Round(Between(5, 20), 2) },
        8 => new() { Kind = FaultKind.HumOnly, Output = Any(), Size = Math.Round(Between(0.15, 1.5), 3) },
        9 => OffSpeed(),
        _ => new() { Kind = FaultKind.MeterLoading, Output = 0, Size = Math.Round(2500 * Math.Pow(3.2, Between(0, 1))) },
    };

    private PlantedFault OffSpeed() => random.Next(3) switch
    {
        0 => new() { Kind = FaultKind.MainsOff, Output = 0, Size = Math.Round(Between(0.3, 0.9), 3) },
        1 => new() { Kind = FaultKind.MainsOff, Output = 0, Size = -Math.Round(Between(0.3, 0.9), 3) },
        _ => new() { Kind = FaultKind.MotorSlow, Output = 0, Size = Math.Round(Between(0.3, 0.9), 3) },
    };

    // Neighbours of the same kind: leads of two terminals side by side are what gets mixed up.
    private PlantedFault Swapped()
    {
        while (true)
        {
            var index = random.Next(profile.Outputs.Count - 1);
            var (one, other) = (profile.Outputs[index], profile.Outputs[index + 1]);
            if (one.Group == other.Group && one.Capacitor is null && !taken.Contains(one.Number) && taken.Add(other.Number) && taken.Add(one.Number))
                return new() { Kind = FaultKind.Swapped, Output = one.Number, Partner = other.Number };
        }
    }

    private int Any() => Take([.. profile.Outputs]);

    private int Filtered() => Take([.. profile.FilteredOutputs]);

    private int Take(GeneratorOutput[] outputs)
    {
        while (true)
        {
            var number = outputs[random.Next(outputs.Length)].Number;
            if (taken.Add(number)) return number;
        }
    }

    private double Between(double least, double most) => least + ((most - least) * random.NextDouble());
}
