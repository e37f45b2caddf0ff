using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Making;

namespace AutoSweep.Sim.Tests.Making;

public class FaultPlantingTests
{
    private const int Filtered = 60;
    private static readonly GeneratorProfile Profile = GeneratorProfileLibrary.Open("classic-91-60hz");
    private static readonly BenchDefinition Sound = SoundCapacitors.Fit(
        new BenchMaker(new() { Name = "planting", Profile = "classic-91-60hz", Seed = 5 }, Profile).Make().Bench, Profile, new(5));

    [Fact]
    public void A_sound_capacitor_costs_a_tenth_of_a_decibel_by_its_value_and_little_by_its_loss()
    {
        foreach (var truth in Sound.Truth.Outputs.Where(truth => truth.Peak is not null))
        {
            var lost = 20 * Math.Log10(truth.Peak!.Millivolts / truth.AsFoundMillivolts);
            Assert.InRange(lost, 0, 0.1 + (20 * Math.Log10(1 + (0.008 * truth.Peak.Q))) + 0.02);
        }
    }

    [Theory]
    [InlineData(FaultKind.CapacitorDrifted, 1.5)]
    [InlineData(FaultKind.CapacitorOpen, 100)]
    [InlineData(FaultKind.CapacitorLeaky, 0.2)]
    internal void A_bad_capacitor_takes_level_as_found_and_leaves_the_peak_alone(FaultKind kind, double size)
    {
        var (before, after) = (Truth(Sound, Filtered), Truth(Plant(kind, Filtered, size), Filtered));
        Assert.True(after.AsFoundMillivolts < before.AsFoundMillivolts * 0.8);
        Assert.Equal(before.Peak, after.Peak);
    }

    [Theory]
    [InlineData(FaultKind.WeakMagnet, -6)]
    [InlineData(FaultKind.StrongMagnet, 5)]
    internal void A_magnet_sets_the_level_so_far_off_the_profiles_curve(FaultKind kind, double decibels)
    {
        foreach (var output in new[] { 20, Filtered })
        {
            var truth = Truth(Plant(kind, output, decibels), output);
            var expected = Profile.Outputs.Single(one => one.Number == output).ExpectedMillivolts!.Value;
            Assert.Equal(decibels, 20 * Math.Log10((truth.Peak?.Millivolts ?? truth.AsFoundMillivolts) / expected), 3);
        }
    }

    [Fact]
    public void A_load_takes_level_and_q_from_filtered_outputs_and_hardly_any_from_plain_ones()
    {
        var loaded = Plant(FaultKind.MeterLoading, 0, 3000);
        Assert.True(Truth(loaded, Filtered).Peak!.Millivolts < 0.9 * Truth(Sound, Filtered).Peak!.Millivolts);
        Assert.True(Truth(loaded, Filtered).Peak!.Q < 0.9 * Truth(Sound, Filtered).Peak!.Q);
        Assert.InRange(Truth(loaded, 5).AsFoundMillivolts / Truth(Sound, 5).AsFoundMillivolts, 0.94, 1);
    }

    [Theory]
    [InlineData(FaultKind.MainsOff, 0.5, 1.005)]
    [InlineData(FaultKind.MotorSlow, 0.5, 0.995)]
    internal void Mains_and_motor_move_every_tone_by_one_ratio(FaultKind kind, double percent, double ratio)
    {
        var off = Plant(kind, 0, percent);
        Assert.All(off.Truth.Outputs, truth => Assert.Equal(ratio, truth.ToneHertz / Truth(Sound, truth.Output).ToneHertz, 4));
    }

    [Fact]
    public void Faults_are_drawn_in_different_kinds_and_at_outputs_of_their_own()
    {
        for (var seed = 0; seed < 50; seed++)
        {
            var faults = new FaultDraw(Profile, new(seed)).Draw(FaultDraw.Kinds);
            var outputs = faults.SelectMany(fault => fault.Partner is { } partner ? new[] { fault.Output, partner } : [fault.Output]).Where(output => output > 0).ToList();
            Assert.Equal(FaultDraw.Kinds, faults.Select(fault => fault.Kind).Distinct().Count());
            Assert.Equal(outputs.Distinct().Count(), outputs.Count);
        }
    }

    private static BenchDefinition Plant(FaultKind kind, int output, double size) =>
        FaultPlanting.Plant(Sound, Profile, [new() { Kind = kind, Output = output, Size = size }]);

    private static OutputTruth Truth(BenchDefinition bench, int output) => bench.Truth.Outputs.Single(truth => truth.Output == output);
}
