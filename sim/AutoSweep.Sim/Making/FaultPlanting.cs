using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Making;

/// <summary>Plants faults in a bench by changing the figures that its physics is made of, and works its truth out anew.</summary>
internal static class FaultPlanting
{
    public static BenchDefinition Plant(BenchDefinition bench, GeneratorProfile profile, IReadOnlyList<PlantedFault> faults)
    {
        // Magnets before anything that loads: their size is what the generator itself gives.
        var planted = faults.OrderBy(fault => fault.Output == 0).Aggregate(bench, (made, fault) => Plant(made, bench, profile, fault));
        planted = planted with { Faults = [.. bench.Faults, .. faults] };
        return planted with { Truth = OutputTruths.Of(planted, profile) };
    }

    private static BenchDefinition Plant(BenchDefinition made, BenchDefinition sound, GeneratorProfile profile, PlantedFault fault) => fault.Kind switch
    {
        FaultKind.MainsOff => made with { Mains = made.Mains with { Hertz = made.Mains.Hertz * (1 + (fault.Size / 100)) } },
        FaultKind.MotorSlow => made with { Mains = made.Mains with { SlipPercent = fault.Size } },
        FaultKind.MeterLoading => made with { FrontEnd = made.FrontEnd with { InputOhms = fault.Size } },
        _ => made with { Outputs = [.. made.Outputs.Select(output => output.Number == fault.Output ? Plant(output, sound, profile, fault) : output)] },
    };

    private static OutputDefinition Plant(OutputDefinition output, BenchDefinition sound, GeneratorProfile profile, PlantedFault fault) => fault.Kind switch
    {
        FaultKind.HumOnly => output with { HumMillivolts = fault.Size },
        FaultKind.UnsteadyWheel => output with { WobblePercent = fault.Size },
        FaultKind.CapacitorDrifted => output with { Aged = output.Aged! with { Picofarads = Math.Round(fault.Size * Truth(sound, output).Peak!.Picofarads, 1) } },
        FaultKind.CapacitorOpen => output with { Aged = output.Aged! with { Picofarads = fault.Size } },
        FaultKind.CapacitorLeaky => output with { Aged = output.Aged! with { LossTangent = fault.Size } },
        FaultKind.WeakMagnet or FaultKind.StrongMagnet => Moved(output, Truth(sound, output), profile, fault.Size),
        _ => output,
    };

    private static OutputTruth Truth(BenchDefinition sound, OutputDefinition output) => sound.Truth.Outputs.Single(truth => truth.Output == output.Number);

    private static OutputDefinition Moved(OutputDefinition output, OutputTruth truth, GeneratorProfile profile, double decibels)
    {
        var expected = profile.Outputs.Single(one => one.Number == output.Number).ExpectedMillivolts
            ?? throw new InvalidOperationException($"Output {output.Number} has no place on the profile's curve.");
        var factor = expected * Math.Pow(10, decibels / 20) / (truth.Peak?.Millivolts ?? truth.AsFoundMillivolts);
        return output with { Source = output.Source with { EmfMillivolts = NetworkRecipe.Round(output.Source.EmfMillivolts * factor) } };
    }
}
