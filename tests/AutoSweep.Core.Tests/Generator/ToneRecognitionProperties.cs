using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;
using FsCheck.Xunit;

namespace AutoSweep.Core.Tests.Generator;

/// <summary>What holds of tone recognition for every output of every shipped generator.</summary>
public class ToneRecognitionProperties
{
    private static readonly GeneratorProfile[] Profiles = [.. GeneratorProfileLibrary.Names.Select(GeneratorProfileLibrary.Open)];

    [Property(MaxTest = 500)]
    public bool A_tone_at_a_known_mains_names_its_output(uint pick, ushort shift)
    {
        var (profile, output) = Picked(pick);
        var ratio = 1 + Signed(shift) * 0.1;
        var counted = profile.ToneOf(output, new(profile.MainsHertz * ratio));
        var match = new ToneRecognition(profile).Match(counted, ratio, MainsEstimate.KnownMainsCents);
        return match.Output == output && Math.Abs(match.CentsOff) < 1e-6 && match.Kind == ToneMatchKind.Tone;
    }

    // ±1 % is what EN 50160 allows an interconnected supply [from memory].
    [Property(MaxTest = 500)]
    public bool A_mains_within_one_percent_never_names_a_wrong_output(uint pick, ushort shift)
    {
        var (profile, output) = Picked(pick);
        var match = new ToneRecognition(profile).Match(profile.ToneOf(output, new(profile.MainsHertz * (1 + Signed(shift) * 0.01))));
        return match.Output == output && match.Kind is ToneMatchKind.Tone or ToneMatchKind.HumOrTone;
    }

    [Property(MaxTest = 500)]
    public bool A_count_in_the_middle_half_between_two_tones_is_never_trusted(uint pick, ushort place)
    {
        var (profile, output) = Picked(pick);
        var tones = profile.Outputs.Select(profile.ToneOf).Select(tone => tone.Hertz).Order().ToList();
        var lower = Math.Min(tones.IndexOf(profile.ToneOf(output).Hertz), tones.Count - 2);
        var share = 0.5 + Signed(place) * 0.249;
        var counted = tones[lower] * Math.Pow(tones[lower + 1] / tones[lower], share);
        return !new ToneRecognition(profile).Match(new(counted), 1, 1000).IsTrusted;
    }

    [Property(MaxTest = 500)]
    public bool A_trusted_match_is_within_its_tolerance_whatever_is_counted(uint pick, double hertz, byte tolerance)
    {
        var match = new ToneRecognition(Picked(pick).Profile).Match(new(hertz), 1, tolerance);
        return !match.IsTrusted || (Math.Abs(match.CentsOff) <= tolerance && match.IsNearTone && match.HumMultiple == 0);
    }

    [Property(MaxTest = 300)]
    public bool The_mains_is_learnt_within_nine_counts_although_two_of_them_are_miscounts(int seed, ushort shift)
    {
        var random = new Random(seed);
        var profile = Profiles[random.Next(Profiles.Length)];
        var ratio = 1 + Signed(shift) * 0.009;
        var recognition = new ToneRecognition(profile);
        var estimate = MainsEstimate.Unknown;
        for (var clip = 0; clip < 9; clip++)
        {
            var tone = profile.ToneOf(profile.Outputs[random.Next(profile.Outputs.Count)]).Hertz * ratio;
            var counted = clip is 3 or 6 ? tone * (0.5 + random.NextDouble()) : tone * (1 + (random.NextDouble() - 0.5) * 2e-4);
            estimate = estimate.With(recognition.Match(new(counted), estimate));
        }

        return Math.Abs(estimate.Ratio / ratio - 1) < 2e-4;
    }

    private static (GeneratorProfile Profile, GeneratorOutput Output) Picked(uint pick)
    {
        var profile = Profiles[pick % Profiles.Length];
        return (profile, profile.Outputs[(int)(pick / Profiles.Length % profile.Outputs.Count)]);
    }

    /// <summary>Any 16-bit number as a share from -1 to 1.</summary>
    private static double Signed(ushort any) => any / 32767.5 - 1;
}
