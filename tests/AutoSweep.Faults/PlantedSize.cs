using AutoSweep.Core.Diagnosis;
using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;
using MathNet.Numerics.Statistics;

namespace AutoSweep.Faults;

/// <summary>How large a planted fault is in units of the noise in which it must be seen.</summary>
/// <remarks>
/// Dead, hum, miswired: the level, or the step to the neighbour's tone, over the noise of a level on the lowest reading and of a count.
/// Capacitors: the level lost (dB) over the standard uncertainty of a level read twice, in the survey and in the sweep. Magnets: the distance
/// from the curve (dB) over the scatter of a sound generator's outputs about it. Wheel: the swing over the usual wheel's. Speed: the ratio's
/// distance from 1 over the mains' own wander. Loading: the median level that filtered outputs lose (dB) over what the curve's step between
/// filtered and plain outputs is known to.
/// </remarks>
internal static class PlantedSize
{
    // 20 log10 of two readings of half a per cent noise each, seven and three samples averaged, and 1 % of slow change between them.
    private const double LevelTwiceDecibels = 0.1;

    // 0.3 to 2 % is drawn for a sound wheel: what a fault must stand out from is the upper end.
    private const double UsualSwingPercent = 2;

    // The step between groups: see DiagnosisOptions.CurveStepUncertainty, and two medians of some forty outputs.
    private const double StepDecibels = 0.55;

    // Noise of a level near zero: two counts and the low-level error of a range, at the terminal (MeterDefinition, gain 20).
    private const double FloorMillivolts = 0.02;

    private const double CentsOfCount = 2;

    public static PlantedFaultSize Of(PlantedFault fault, BenchDefinition sound, BenchDefinition bench, GeneratorProfile profile)
    {
        var (named, multiple) = Multiple(fault, sound, bench, profile);
        int[] outputs = fault.Output == 0 ? [] : fault.Partner is { } partner ? [fault.Output, partner] : [fault.Output];
        return new(named, outputs, multiple, FormattableString.Invariant($"{fault.Kind} {fault.Size} at {fault.Output}"));
    }

    private static (GeneratorFault Fault, double Multiple) Multiple(
        PlantedFault fault, BenchDefinition sound, BenchDefinition bench, GeneratorProfile profile) => fault.Kind switch
    {
        FaultKind.Dead => (GeneratorFault.DeadPickup, Truth(sound, fault).AsFoundMillivolts / FloorMillivolts),
        FaultKind.HumOnly => (GeneratorFault.HumWithoutTone, fault.Size / FloorMillivolts),
        FaultKind.Swapped => (GeneratorFault.MiswiredTerminals, 100 / CentsOfCount),
        FaultKind.CapacitorDrifted => (GeneratorFault.CapacitorDrifted, Lost(fault, sound, bench) / LevelTwiceDecibels),
        FaultKind.CapacitorOpen => (GeneratorFault.CapacitorOpen, Lost(fault, sound, bench) / LevelTwiceDecibels),
        FaultKind.CapacitorLeaky => (GeneratorFault.CapacitorLeaky, Lost(fault, sound, bench) / LevelTwiceDecibels),
        FaultKind.WeakMagnet => (GeneratorFault.WeakMagnet, -fault.Size / Scatter(fault, sound, bench, profile)),
        FaultKind.StrongMagnet => (GeneratorFault.StrongMagnet, fault.Size / Scatter(fault, sound, bench, profile)),
        FaultKind.UnsteadyWheel => (GeneratorFault.UnsteadyWheel, fault.Size / UsualSwingPercent),
        FaultKind.MainsOff or FaultKind.MotorSlow => (GeneratorFault.OffSpeed, Math.Abs(fault.Size) / sound.Mains.WanderPercent),
        _ => (GeneratorFault.MeterLoading, Loaded(fault, sound, profile) / StepDecibels),
    };

    private static OutputTruth Truth(BenchDefinition bench, PlantedFault fault) => bench.Truth.Outputs.Single(truth => truth.Output == fault.Output);

    // What the fault itself costs: against the sound capacitor, at the same load and speed.
    private static double Lost(PlantedFault fault, BenchDefinition sound, BenchDefinition bench)
    {
        var (before, after) = (Truth(sound, fault), Truth(bench, fault));
        return 20 * Math.Log10(before.AsFoundMillivolts / before.Peak!.Millivolts * after.Peak!.Millivolts / after.AsFoundMillivolts);
    }

    // What the sound generator scatters by on this side of its filters, under the load that the job is read with.
    private static double Scatter(PlantedFault fault, BenchDefinition sound, BenchDefinition bench, GeneratorProfile profile)
    {
        var model = new GeneratorModel(sound with { FrontEnd = bench.FrontEnd }, profile);
        var filtered = model.HasFilter(fault.Output);
        return sound.Truth.Outputs.Where(truth => model.HasFilter(truth.Output) == filtered)
            .Select(truth => (Output: profile.Outputs.Single(one => one.Number == truth.Output), Millivolts: Level(model, truth, sound)))
            .GroupBy(one => one.Output.Group).SelectMany(group => Deviations([.. group.Select(one => 20 * Math.Log10(one.Millivolts / one.Output.ExpectedMillivolts!.Value))]))
            .StandardDeviation();
    }

    private static IEnumerable<double> Deviations(double[] decibels) => decibels.Select(one => one - decibels.Median());

    private static double Level(GeneratorModel model, OutputTruth truth, BenchDefinition sound) => truth.Peak is null
        ? truth.AsFoundMillivolts
        : model.Network(truth.Output).Response(truth.ToneHertz, sound.Fixture.LossTangent).Peak()!.Value.Gain * model.Output(truth.Output).Source.EmfMillivolts;

    private static double Loaded(PlantedFault fault, BenchDefinition sound, GeneratorProfile profile)
    {
        var loaded = new GeneratorModel(sound with { FrontEnd = sound.FrontEnd with { InputOhms = fault.Size } }, profile);
        return sound.Truth.Outputs.Where(truth => truth.Peak is not null)
            .Select(truth => 20 * Math.Log10(truth.Peak!.Millivolts / Level(loaded, truth, sound))).Median();
    }
}
