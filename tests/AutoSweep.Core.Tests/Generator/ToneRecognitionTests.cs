using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Tests.Generator;

public class ToneRecognitionTests
{
    private static readonly ToneRecognition Classic60 = Of("classic-91-60hz");
    private static readonly ToneRecognition Classic50 = Of("classic-91-50hz");

    [Theory]
    [InlineData(440.0, 46, 0)]
    [InlineData(523.077, 49, 0)]
    [InlineData(5924.57, 91, 0)]
    [InlineData(32.69, 1, -0.12)]
    [InlineData(444.0, 46, 15.67)]
    public void A_count_on_a_tone_names_its_output(double hertz, int output, double cents)
    {
        var match = Classic60.Match(new(hertz));
        Assert.Equal((ToneMatchKind.Tone, true, output), (match.Kind, match.IsTrusted, match.Output!.Number));
        Assert.Equal(cents, match.CentsOff, 0.01);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void No_usable_count_is_nothing(double hertz)
    {
        var match = Classic60.Match(new(hertz));
        Assert.Equal((ToneMatchKind.Nothing, false, null), (match.Kind, match.IsTrusted, match.Output));
    }

    [Theory]
    [InlineData(452.8, 46)] // Half-way to the next tone.
    [InlineData(447.0, 46)] // 27 cents: more than a quarter of the way.
    [InlineData(20.0, 1)] // Far below the lowest.
    [InlineData(12_000.0, 91)] // Far above the highest.
    public void A_count_between_tones_is_not_trusted(double hertz, int nearest)
    {
        var match = Classic60.Match(new(hertz));
        Assert.Equal((ToneMatchKind.OffTone, false, nearest), (match.Kind, match.IsTrusted, match.Output!.Number));
    }

    [Theory]
    [InlineData(60.0, 1)]
    [InlineData(60.3, 1)]
    [InlineData(120.0, 2)]
    [InlineData(180.0, 3)]
    [InlineData(359.9, 6)]
    public void The_mains_and_its_low_multiples_are_hum(double hertz, int multiple)
    {
        var match = Classic60.Match(new(hertz));
        Assert.Equal((ToneMatchKind.Hum, multiple, false), (match.Kind, match.HumMultiple, match.IsTrusted));
    }

    [Fact]
    public void Hum_follows_the_mains_ratio() => Assert.Equal(ToneMatchKind.Hum, Classic60.Match(new(118.0), 118.0 / 120, 5).Kind);

    // Output 36 at 50 Hz is 246.86 Hz, 22 cents below the fifth multiple of the mains.
    [Fact]
    public void A_tone_beside_hum_is_ambiguous_until_the_mains_is_known()
    {
        Assert.Equal(ToneMatchKind.HumOrTone, Classic50.Match(new(248.0)).Kind);
        var known = MainsEstimate.Measured(GeneratorProfileLibrary.Open("classic-91-50hz"), new(50.0));
        Assert.Equal((ToneMatchKind.Tone, 36), Named(Classic50.Match(new(247.0), known)));
        Assert.Equal(ToneMatchKind.Hum, Classic50.Match(new(250.0), known).Kind);
    }

    // Mains converters a semitone off have been seen in the trade: every tone then lands on its neighbour's.
    [Fact]
    public void A_generator_a_semitone_off_is_recognised_once_one_output_is_told()
    {
        var profile = GeneratorProfileLibrary.Open("classic-91-60hz");
        var ratio = Math.Pow(2, -1.0 / 12);
        var told = MainsEstimate.Told(profile, profile.Outputs[45], new(440 * ratio));
        Assert.All(profile.Outputs, output =>
            Assert.Equal(output.Number, Classic60.Match(new(profile.ToneOf(output).Hertz * ratio), told).Output!.Number));
    }

    [Fact]
    public void Sixty_hertz_gearing_on_measured_fifty_hertz_mains_is_recognised()
    {
        var profile = GeneratorProfileLibrary.Open("classic-91-60hz");
        var match = Classic60.Match(new(440.0 * 5 / 6), MainsEstimate.Measured(profile, new(50)));
        Assert.Equal((ToneMatchKind.Tone, 46), Named(match));
    }

    private static (ToneMatchKind, int) Named(ToneMatch match) => (match.Kind, match.Output!.Number);

    private static ToneRecognition Of(string name) => new(GeneratorProfileLibrary.Open(name));
}
