using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Generator;

public class ShippedProfilesTests
{
    private const string Folder = "src/AutoSweep.Core/Generator/Profiles/";

    public static TheoryData<string> Names => [.. GeneratorProfileLibrary.Names];

    [Fact]
    public void The_library_ships_the_classic_generator_four_ways_and_two_invented_ones() => Assert.Equal(
        ["classic-91-50hz", "classic-91-60hz", "classic-91-retrofit-50hz", "classic-91-retrofit-60hz", "invented-quillmark-93-60hz",
            "invented-smallbench-14-60hz"],
        GeneratorProfileLibrary.Names);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_shipped_profile_opens_by_name_and_lies_beside_the_program_to_be_copied(string name)
    {
        var beside = Path.Combine(AppContext.BaseDirectory, "generator-profiles", name + ".json");
        Assert.Equal(GeneratorProfileLibrary.Open(name).Name, GeneratorProfileLibrary.Open(beside).Name);
        Assert.Equal(Repository.Text($"{Folder}{name}.json"), GeneratorProfileLibrary.TextOf(name));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Adjacent_tones_of_a_shipped_profile_lie_three_percent_apart_or_more(string name)
    {
        var profile = GeneratorProfileLibrary.Open(name);
        var rising = profile.Outputs.Select(profile.ToneOf).Select(tone => tone.Hertz).Order().ToList();
        Assert.All(rising.Zip(rising.Skip(1)), pair => Assert.True(pair.Second / pair.First > 1.03, $"{pair}"));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Only_invented_generators_are_called_invented(string name)
    {
        var profile = GeneratorProfileLibrary.Open(name);
        Assert.Equal(profile.Invented, name.StartsWith("invented-", StringComparison.Ordinal));
        Assert.Equal(profile.Invented, profile.Name.Contains("(invented)", StringComparison.Ordinal));
    }

    // Filter arrangement and nominal capacitors: published wiki and service pages, named in the profiles' source.
    [Theory]
    [InlineData("classic-91-60hz", 1, 43, FilterKind.None, 0)]
    [InlineData("classic-91-60hz", 44, 48, FilterKind.Transformer, 0)]
    [InlineData("classic-91-60hz", 49, 54, FilterKind.TunedLc, 255_000)]
    [InlineData("classic-91-50hz", 55, 91, FilterKind.TunedLc, 105_000)]
    public void The_classic_filters_are_the_published_ones(string name, int first, int last, FilterKind filter, long picofarads) =>
        Assert.All(GeneratorProfileLibrary.Open(name).Outputs.Where(output => output.Number >= first && output.Number <= last),
        output => Assert.Equal((filter, picofarads), (output.Filter, output.Capacitor?.ExpectedPicofarads ?? 0)));

    [Theory]
    [InlineData("classic-91-60hz", 49, 43)]
    [InlineData("classic-91-50hz", 49, 43)]
    [InlineData("classic-91-retrofit-60hz", 37, 55)]
    [InlineData("classic-91-retrofit-50hz", 37, 55)]
    public void The_classic_sweep_covers_49_to_91_or_with_the_retrofit_37_to_91(string name, int first, int count) => Assert.Equal(
        Enumerable.Range(first, count), GeneratorProfileLibrary.Open(name).FilteredOutputs.Select(output => output.Number));

    [Theory]
    [InlineData("classic-91-50hz", "50 Hz gear tooth counts are not confirmed")]
    [InlineData("classic-91-retrofit-50hz", "50 Hz gear tooth counts are not confirmed")]
    [InlineData("classic-91-retrofit-60hz", "outputs 37 to 48 are an assumption")]
    [InlineData("classic-91-60hz", "Which of the two published gear pairs for E")]
    public void A_profile_says_what_nobody_has_confirmed(string name, string sentence) =>
        Assert.Contains(GeneratorProfileLibrary.Open(name).NotConfirmed, entry => entry.Contains(sentence, StringComparison.Ordinal));

    [Fact]
    public void The_assumed_retrofit_capacitors_resonate_with_the_winding_that_the_profile_states()
    {
        const double winding = 0.8;
        var profile = GeneratorProfileLibrary.Open("classic-91-retrofit-60hz");
        Assert.All(profile.Outputs.Where(output => output.Filter == FilterKind.RetrofitLc), output =>
        {
            var resonant = Capacitance.FromFarads(1 / (Math.Pow(profile.ToneOf(output).RadiansPerSecond, 2) * winding));
            Assert.InRange(output.Capacitor!.Expected.Nanofarads - resonant.Nanofarads, -0.5, 0.5);
        });
    }

    // The rule that the profile's source states as a placeholder: 3.2 mV at 250 Hz, 2 dB an octave up to both sides.
    [Fact]
    public void The_expected_levels_follow_the_stated_rule()
    {
        var profile = GeneratorProfileLibrary.Open("classic-91-60hz");
        Assert.All(profile.Outputs, output => Assert.Equal(
            2 * Math.Abs(Math.Log2(profile.ToneOf(output).Hertz / 250)),
            Level.FromMillivolts(output.ExpectedMillivolts!.Value).DecibelsAbove(Level.FromMillivolts(3.2)), 0.015));
    }

    [Fact]
    public void The_invented_demo_generator_is_as_large_as_a_real_one_and_shares_none_of_its_gears()
    {
        var profile = GeneratorProfileLibrary.Open("invented-quillmark-93-60hz");
        var classic = GeneratorProfileLibrary.Open("classic-91-60hz").GearTrains.Values.Select(Ratio).ToList();
        Assert.Equal((93, 47), (profile.Outputs.Count, profile.FilteredOutputs.Count()));
        Assert.Equal(3, profile.FilteredOutputs.Select(output => output.Group).Distinct().Count());
        Assert.All(profile.GearTrains.Values, train => Assert.DoesNotContain(Ratio(train), classic));
    }

    private static double Ratio(GearTrain train) => (double)train.DrivingTeeth / train.DrivenTeeth;
}
