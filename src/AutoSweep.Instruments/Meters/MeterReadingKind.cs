namespace AutoSweep.Instruments.Meters;

/// <summary>The kinds of answer that a meter gives to a query for a number.</summary>
public enum MeterReadingKind
{
    /// <summary>A number.</summary>
    Value,

    /// <summary>The input is over the range (9.9E37 in SCPI-1999).</summary>
    Overload,

    /// <summary>There was nothing to measure (9.91E37, not a number, in SCPI-1999).</summary>
    NoData,

    /// <summary>The answer is none that this driver knows.</summary>
    Invalid,
}
