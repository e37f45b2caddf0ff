namespace AutoSweep.Worker.Parts;

/// <summary>When a capacitance meter's readings count as a part. Figures without a source are bench practice.</summary>
public sealed record PartWatchOptions
{
    /// <summary>Below this many picofarads the clips are empty.</summary>
    /// <value>Default 25 pF: leads that move, and far below any filter's part.</value>
    public double EmptyPicofarads { get; init; } = 25;

    /// <summary>How many readings in a row must agree.</summary>
    /// <value>Default 4: the contact is firm, and a standard deviation can be told.</value>
    public int Readings { get; init; } = 4;

    /// <summary>How far they may spread, as a share of their mean.</summary>
    /// <value>Default 0.001: twice the basic accuracy of a usual meter; a hand that still holds the part moves more.</value>
    public double Spread { get; init; } = 0.001;

    /// <summary>The spread that is always allowed in picofarads: the last digit of a small part.</summary>
    public double SpreadPicofarads { get; init; } = 2;

    /// <summary>How near to its reading of before a part is taken for the same after a gap, as a share.</summary>
    /// <value>Default 0.002: twice what readings may spread. Another part as near as that waits until it is lifted, which loses nothing.</value>
    public double SameAfterGap { get; init; } = 0.002;
}
