namespace AutoSweep.Core.Calibration;

/// <summary>How much is read for a calibration.</summary>
/// <remarks>The defaults take 228 readings of the usual box: about two minutes on a meter that takes half a second each.</remarks>
public sealed record CalibrationPlanOptions
{
    /// <summary>What is read where every value is typed by hand: 28 values of the usual box, each once.</summary>
    public static CalibrationPlanOptions ByHand { get; } = new() { Pairs = false, RandomSets = 5, OpenEvery = 14, Repeats = 1 };

    /// <summary>How many relays make a decade.</summary>
    /// <value>Default 4: the usual weights 1-2-2-4 (docs/fixture-protocol.md).</value>
    public int RelaysPerDecade { get; init; } = 4;

    /// <summary>Whether the pairs within a decade are read.</summary>
    /// <value>Default true: a second and third sight of every relay beside parts of its own size.</value>
    public bool Pairs { get; init; } = true;

    /// <summary>How many random combinations of all relays are read.</summary>
    /// <value>Default 24; a relay that fails once in five closures is missed by all of its dozen sets in 7 cases of 100.</value>
    public int RandomSets { get; init; } = 24;

    /// <summary>The seed of the random combinations.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>After how many sets the open fixture is read again.</summary>
    /// <value>Default 10.</value>
    public int OpenEvery { get; init; } = 10;

    /// <summary>How often each set is read; the scatter is the meter's noise.</summary>
    /// <value>Default 3.</value>
    public int Repeats { get; init; } = 3;
}
