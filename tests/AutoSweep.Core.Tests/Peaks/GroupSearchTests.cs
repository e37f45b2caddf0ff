using AutoSweep.Sources;

namespace AutoSweep.Core.Tests.Peaks;

/// <summary>Groups of eight outputs that share coil family and law, each search told what the earlier ones taught.</summary>
public class GroupSearchTests
{
    private static readonly SearchScore Taught = new(
        [.. SourceLibrary.Groups(groups: 36, outputs: 8, seed: 8).AsParallel().AsOrdered().Select(SearchRun.OfGroup).SelectMany(outcomes => outcomes.Skip(3))]);

    [Fact]
    public void After_three_outputs_four_readings_do_for_half_of_the_rest() => Assert.True(Taught.MedianReadings <= 4);

    [Fact]
    public void What_is_taught_costs_no_level() => Assert.True(Taught.LossQuantile(0.99, Enum.GetValues<SourceFamily>()) < 0.01);

    // Of 180 intervals two per cent are four.
    [Fact]
    public void What_is_taught_does_not_make_the_stated_intervals_too_narrow() => Assert.True(Taught.ShareOutside <= 0.02, $"{Taught.ShareOutside}");
}
