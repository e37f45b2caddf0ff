using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Generator;

/// <summary>
/// The classic generator's tones against the published table (sources in tests/Reference/tonewheel_frequencies.json) and
/// against equal temperament on ISO 16's A4 = 440 Hz.
/// </summary>
public class ClassicTonesTests
{
    private static readonly GeneratorProfile Classic = GeneratorProfileLibrary.Open("classic-91-60hz");

    public static TheoryData<string> ClassicNames =>
        [.. GeneratorProfileLibrary.Names.Where(name => name.StartsWith("classic", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(ClassicNames))]
    public void Every_tone_equals_the_published_fraction(string name)
    {
        var profile = GeneratorProfileLibrary.Open(name);
        Assert.Equal(91, profile.Outputs.Count);
        Assert.All(PublishedTone.All.Zip(profile.Outputs), pair =>
        {
            Assert.Equal(pair.First.Number, pair.Second.Number);
            Assert.Equal(pair.First.Hertz, profile.ToneOf(pair.Second).Hertz, pair.First.Hertz * 1e-14);
        });
    }

    [Fact]
    public void Output_46_is_exactly_440_hertz() => Assert.Equal(440.0, Tone(Classic, 46).Hertz);

    [Theory]
    [InlineData(1, 84, -0.707, 0.200)]
    [InlineData(85, 91, 1.248, 1.981)]
    public void Tones_stay_within_the_published_cents_of_equal_temperament(int first, int last, double least, double most)
    {
        var cents = Enumerable.Range(first, last - first + 1).Select(number => CentsOff(Classic, number)).ToList();
        Assert.Equal(least, cents.Min(), 0.0005);
        Assert.Equal(most, cents.Max(), 0.0005);
    }

    [Fact]
    public void Every_tone_lies_where_the_published_table_puts_it_in_cents() =>
        Assert.All(PublishedTone.All, row => Assert.Equal(row.Cents, CentsOff(Classic, row.Number), 1e-8));

    [Theory]
    [InlineData("classic-91-60hz", -0.145)]
    [InlineData("classic-91-60hz#e-69-67", -0.396)]
    [InlineData("classic-91-50hz#e-69-67", -0.396)]
    [InlineData("classic-91-retrofit-60hz#e-69-67", -0.396)]
    [InlineData("classic-91-retrofit-50hz", -0.145)]
    public void Both_published_gear_pairs_for_E_can_be_chosen(string reference, double cents)
    {
        var profile = GeneratorProfileLibrary.Open(reference);
        Assert.All([5, 17, 29, 41, 53, 65, 77], number => Assert.Equal(cents, CentsOff(profile, number), 0.0005));
    }

    [Fact]
    public void The_variant_moves_no_tone_but_E()
    {
        var variant = GeneratorProfileLibrary.Open("classic-91-60hz#e-69-67");
        Assert.All(PublishedTone.All, row =>
            Assert.Equal(row.VariantHertz ?? row.Hertz, Tone(variant, row.Number).Hertz, row.Hertz * 1e-14));
    }

    [Fact]
    public void Sixty_hertz_gearing_on_fifty_hertz_mains_plays_316_cents_flat() => Assert.All(Classic.Outputs, output =>
        Assert.Equal(-315.641287, Classic.ToneOf(output, new(50)).CentsAbove(Classic.ToneOf(output)), 1e-6));

    private static Frequency Tone(GeneratorProfile profile, int number) =>
        profile.ToneOf(profile.Outputs.Single(output => output.Number == number));

    private static double CentsOff(GeneratorProfile profile, int number) =>
        Tone(profile, number).CentsAbove(EqualTemperament.OfOutput(number));
}
