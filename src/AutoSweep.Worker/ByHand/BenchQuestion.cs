using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.ByHand;

/// <summary>A question to the person at the bench, with what a screen may show larger than a line.</summary>
/// <param name="Text">The question in lines; it says everything that the rest says.</param>
/// <param name="Kind">What it is about.</param>
public sealed record BenchQuestion(string Text, BenchQuestionKind Kind)
{
    /// <summary>Whether <c>u</c> takes the last typed level back.</summary>
    public bool CanTakeBack { get; init; }

    /// <summary>Whether an empty answer is one.</summary>
    public bool MayBeEmpty { get; init; }

    /// <summary>Whether <c>?</c> tells more.</summary>
    public bool HasHelp { get; init; }

    /// <summary>The unit of a number that is typed without one; none where a unit must be typed.</summary>
    public string? Unit { get; init; }

    /// <summary>The dials of the box, the largest first; empty where none is asked about.</summary>
    public IReadOnlyList<ShownDial> Dials { get; init; } = [];

    /// <summary>What the dials add up to as printed; none where none is asked about.</summary>
    public Capacitance? Total { get; init; }
}
