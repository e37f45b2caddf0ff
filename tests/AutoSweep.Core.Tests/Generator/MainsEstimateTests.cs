using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Tests.Generator;

public class MainsEstimateTests
{
    private static readonly GeneratorProfile Profile = GeneratorProfileLibrary.Open("classic-91-60hz");
    private static readonly ToneRecognition Recognition = new(Profile);

    [Fact]
    public void Nothing_known_is_a_ratio_of_one_with_a_wide_tolerance() => Assert.Equal((0, 1.0, 20.0), Said(MainsEstimate.Unknown));

    [Fact]
    public void Three_counts_make_it_known()
    {
        var estimate = After(1.004, 40, 41, 42);
        Assert.Equal((3, 9.0), (estimate.Counts, estimate.ToleranceCents));
        Assert.Equal(1.004, estimate.Ratio, 1e-9);
    }

    [Fact]
    public void The_first_count_is_believed_half() => Assert.Equal(1.002, After(1.004, 40).Ratio, 1e-9);

    [Fact]
    public void Hum_and_counts_between_tones_say_nothing_of_the_mains()
    {
        var known = After(1.004, 40, 41, 42);
        Assert.Same(known, known.With(Recognition.Match(new(120 * 1.004), known)));
        Assert.Same(known, known.With(Recognition.Match(new(453.5), known)));
        Assert.Same(known, known.With(Recognition.Match(new(0), known)));
    }

    [Fact]
    public void The_estimate_follows_a_step_of_the_mains()
    {
        var estimate = After(0.995, Enumerable.Range(50, 9).ToArray());
        foreach (var number in Enumerable.Range(60, 5))
            estimate = estimate.With(Recognition.Match(Tone(number, 1.004), estimate));
        Assert.Equal(1.004, estimate.Ratio, 1e-9);
    }

    [Fact]
    public void A_measured_mains_is_known_at_once()
    {
        var estimate = MainsEstimate.Measured(Profile, new(59.4));
        Assert.Equal((0.99, 9.0), (estimate.Ratio, estimate.ToleranceCents));
    }

    private static (int, double, double) Said(MainsEstimate estimate) => (estimate.Counts, estimate.Ratio, estimate.ToleranceCents);

    private static MainsEstimate After(double ratio, params int[] numbers) => numbers.Aggregate(MainsEstimate.Unknown,
        (estimate, number) => estimate.With(Recognition.Match(Tone(number, ratio), estimate)));

    private static Frequency Tone(int number, double ratio) => new(Profile.ToneOf(Profile.Outputs[number - 1]).Hertz * ratio);
}
