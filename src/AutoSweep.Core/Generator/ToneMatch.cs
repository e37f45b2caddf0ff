using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Generator;

/// <summary>Which output a counted frequency belongs to, and how far that is to be believed.</summary>
public sealed record ToneMatch
{
    /// <summary>What the count turned out to be.</summary>
    public required ToneMatchKind Kind { get; init; }

    /// <summary>The frequency that was counted.</summary>
    public required Frequency Counted { get; init; }

    /// <summary>The output whose tone lies nearest, trusted or not; none when nothing was counted.</summary>
    public GeneratorOutput? Output { get; init; }

    /// <summary>The tone of <see cref="Output"/> at the mains ratio of the match.</summary>
    public Frequency Expected { get; init; }

    /// <summary>How many cents the count lies above <see cref="Expected"/>; negative below.</summary>
    public double CentsOff { get; init; }

    /// <summary>Whether the count lies within a quarter of the distance to the next tone, however far the mains may be off.</summary>
    public bool IsNearTone { get; init; }

    /// <summary>The mains ratio that this count alone would mean, if it is the tone of <see cref="Output"/>.</summary>
    public double MainsRatio { get; init; }

    /// <summary>Which multiple of the mains frequency lies nearest, from 1; 0 when the count is not that of hum.</summary>
    public int HumMultiple { get; init; }

    /// <summary>Whether the count names its output without doubt.</summary>
    public bool IsTrusted => Kind == ToneMatchKind.Tone;
}
