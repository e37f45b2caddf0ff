using AutoSweep.Core.Diagnosis;
using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Making;

namespace AutoSweep.Faults;

/// <summary>Simulated generators, none or three to eight of the eleven kinds of fault in each, surveyed, swept and diagnosed.</summary>
public static class FaultStudy
{
    private static readonly string[] Profiles = ["classic-91-60hz", "invented-quillmark-93-60hz", "classic-91-retrofit-60hz"];

    /// <summary>Runs the study; the same seed gives the same result.</summary>
    /// <param name="generators">How many generators.</param>
    /// <param name="seed">The seed of everything.</param>
    /// <param name="withOldCapacitors">Whether the old capacitors are measured when they come off, as the job's routine has it.</param>
    public static FaultStudyResult Run(int generators, int seed, bool withOldCapacitors = true)
    {
        var runs = new FaultRun[generators];
        Parallel.For(0, generators, index => runs[index] = Rehearse(index, (seed * 10_000) + (10 * index), withOldCapacitors));
        return new(runs);
    }

    private static FaultRun Rehearse(int index, int seed, bool withOldCapacitors)
    {
        var name = Profiles[index % Profiles.Length];
        var profile = GeneratorProfileLibrary.Open(name);
        var random = new Random(seed + 7);
        var (made, sheet) = new BenchMaker(new() { Name = $"study-{index}", Profile = name, Seed = seed }, profile).Make();
        var sound = SoundCapacitors.Fit(made, profile, random);
        // None in a quarter of the generators, three to eight of the eleven kinds in the others.
        var kinds = index % 4 == 0 ? 0 : random.Next(3, 9);
        var bench = FaultPlanting.Plant(sound, profile, new FaultDraw(profile, random).Draw(kinds));
        using var rehearsal = new Rehearsal(bench, sheet, profile);
        // Nothing in it ever waits: the clock jumps.
        var state = rehearsal.RunAsync().GetAwaiter().GetResult();
        var findings = Diagnose.Of(state, withOldCapacitors ? OldCapacitorDesk.Measure(bench) : null);
        return new(index, [.. bench.Faults.Select(fault => PlantedSize.Of(fault, sound, bench, profile))], findings, state);
    }
}
