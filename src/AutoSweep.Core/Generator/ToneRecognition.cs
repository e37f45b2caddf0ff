using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Generator;

/// <summary>Tells from a counted frequency which output is clipped.</summary>
/// <remarks>
/// A count is trusted when it lies within the mains' tolerance of a tone and within a quarter of the distance to the next one, and
/// cannot as well be hum. A bench counter miscounts on a few millivolts, so the caller also asks that a count repeats. Immutable.
/// </remarks>
public sealed class ToneRecognition
{
    // Common practice, no source: what a supply's hum is made of; its higher multiples are weaker than any live tone.
    private const int HumMultiples = 6;

    private const double ShareOfDistance = 0.25;

    private readonly GeneratorProfile _profile;
    private readonly GeneratorOutput[] _outputs;
    private readonly double[] _tones;

    /// <summary>A recognition of the outputs of one generator.</summary>
    /// <param name="profile">The generator's profile, with at least one output.</param>
    public ToneRecognition(GeneratorProfile profile)
    {
        _profile = profile;
        _outputs = [.. profile.Outputs.OrderBy(profile.ToneOf)];
        _tones = [.. _outputs.Select(output => profile.ToneOf(output).Hertz)];
    }

    /// <summary>Which output a count belongs to.</summary>
    /// <param name="counted">The counter's figure; 0, negative or not finite counts as nothing.</param>
    /// <param name="mains">What is known of the mains.</param>
    public ToneMatch Match(Frequency counted, MainsEstimate mains) => Match(counted, mains.Ratio, mains.ToleranceCents);

    /// <summary>Which output a count belongs to at a given mains.</summary>
    /// <param name="counted">The counter's figure; 0, negative or not finite counts as nothing.</param>
    /// <param name="mainsRatio">Mains frequency over the frequency for which the gearing was cut, above 0.</param>
    /// <param name="toleranceCents">How many cents a trusted count may lie off its tone.</param>
    public ToneMatch Match(Frequency counted, double mainsRatio = 1, double toleranceCents = MainsEstimate.UnknownMainsCents)
    {
        if (!double.IsFinite(counted.Hertz) || counted.Hertz <= 0)
            return new ToneMatch { Kind = ToneMatchKind.Nothing, Counted = counted };
        var nearest = Nearest(counted.Hertz / mainsRatio);
        var expected = new Frequency(_tones[nearest] * mainsRatio);
        var cents = counted.CentsAbove(expected);
        var near = Math.Abs(cents) <= ShareOfDistance * CentsToNeighbour(nearest, above: cents > 0);
        var hum = HumMultiple(counted, mainsRatio, toleranceCents);
        return new ToneMatch
        {
            Kind = KindOf(near && Math.Abs(cents) <= toleranceCents, hum > 0),
            Counted = counted,
            Output = _outputs[nearest],
            Expected = expected,
            CentsOff = cents,
            IsNearTone = near,
            MainsRatio = counted.Hertz / _tones[nearest],
            HumMultiple = hum,
        };
    }

    private static ToneMatchKind KindOf(bool onTone, bool onHum) => (onTone, onHum) switch
    {
        (true, true) => ToneMatchKind.HumOrTone,
        (true, false) => ToneMatchKind.Tone,
        (false, true) => ToneMatchKind.Hum,
        (false, false) => ToneMatchKind.OffTone,
    };

    // Nearest in ratio, not in hertz: tones are spaced by ratios.
    private int Nearest(double hertz)
    {
        var at = Array.BinarySearch(_tones, hertz);
        if (at >= 0)
            return at;
        var above = ~at;
        if (above == 0 || above == _tones.Length)
            return Math.Min(above, _tones.Length - 1);
        return hertz / _tones[above - 1] < _tones[above] / hertz ? above - 1 : above;
    }

    // The lowest and the highest tone have one neighbour, which serves for both sides; a lone tone is taken to be a semitone from others.
    private double CentsToNeighbour(int index, bool above)
    {
        if (_tones.Length == 1)
            return 100;
        var neighbour = index == 0 ? 1 : index == _tones.Length - 1 ? index - 1 : above ? index + 1 : index - 1;
        return Math.Abs(new Frequency(_tones[neighbour]).CentsAbove(new(_tones[index])));
    }

    private int HumMultiple(Frequency counted, double mainsRatio, double toleranceCents)
    {
        var mains = _profile.MainsHertz * mainsRatio;
        var multiple = (int)Math.Clamp(Math.Round(counted.Hertz / mains), 1, HumMultiples);
        return Math.Abs(counted.CentsAbove(new(multiple * mains))) <= toleranceCents ? multiple : 0;
    }
}
