namespace AutoSweep.Core.Diagnosis;

/// <summary>Something that is wrong, as far as the readings can tell.</summary>
public sealed record Finding
{
    /// <summary>What is wrong.</summary>
    public required GeneratorFault Fault { get; init; }

    /// <summary>The output; none where the whole generator, or the bench, has it.</summary>
    public int? Output { get; init; }

    /// <summary>How large it is, in <see cref="Unit"/>; none where there is no figure to it.</summary>
    public double? Size { get; init; }

    /// <summary>One standard deviation of <see cref="Size"/>; none where it is not known.</summary>
    public double? SizeUncertainty { get; init; }

    /// <summary>The unit of size and uncertainty: dB, mV, pF or %; empty without a figure.</summary>
    public string Unit { get; init; } = "";

    /// <summary>What speaks for it: a sentence or two, with the readings.</summary>
    public required string Evidence { get; init; }

    /// <summary>How to make sure before anything is changed, with the caution that belongs to it.</summary>
    public required string Confirm { get; init; }
}
