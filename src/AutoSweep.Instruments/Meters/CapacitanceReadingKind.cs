namespace AutoSweep.Instruments.Meters;

/// <summary>The kinds of answer that a capacitance meter gives.</summary>
public enum CapacitanceReadingKind
{
    /// <summary>A capacitance.</summary>
    Value,

    /// <summary>Over the meter's range, or its bridge does not balance: a short, a large capacitor.</summary>
    Overload,

    /// <summary>The clips touch nothing, or there was nothing to measure.</summary>
    NoContact,

    /// <summary>The answer is none that this driver knows.</summary>
    Invalid,
}
