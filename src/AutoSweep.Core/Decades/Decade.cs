using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Core.Decades;

/// <summary>One dial of a decade box: equal steps, from position 0 up.</summary>
public sealed record Decade
{
    /// <summary>What one step adds, in picofarads.</summary>
    [Description("What one step of this dial adds, in picofarads: 100000 for the x 100 nF dial."), Range(1, 100_000_000)]
    public required long StepPicofarads { get; init; }

    /// <summary>The highest position.</summary>
    /// <value>Default 10, from 0; many boxes end at 9.</value>
    [Description("The dial's highest position, 9 or 10 as a rule; 10 when left out."), Range(1, 20)]
    public int Steps { get; init; } = 10;

    /// <summary>What positions 1, 2, … add by a capacitance meter, in picofarads; none where nobody has measured them.</summary>
    [Description("What positions 1, 2, ... add by the capacitance meter, in picofarads, position 0 taken off; left out where nobody has measured them.")]
    public IReadOnlyList<double>? MeasuredPicofarads { get; init; }

    /// <summary>What a position adds, in picofarads: as measured, or as printed.</summary>
    /// <param name="position">0 to <see cref="Steps"/>.</param>
    public double Picofarads(int position) =>
        position == 0 ? 0 : MeasuredPicofarads is { } measured ? measured[position - 1] : StepPicofarads * (double)position;
}
