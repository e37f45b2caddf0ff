namespace AutoSweep.Core.Generator;

/// <summary>How an output's level depends on the filter's capacitance at a fixed tone.</summary>
/// <remarks>
/// Any linear network gives V = (a + bC)/(1 + gC) with complex a, b, g. Two special cases cover what is usually met; the peak lies
/// elsewhere under each, so the law must be known or told from the readings.
/// </remarks>
public enum ResponseLaw
{
    /// <summary>Not known beforehand.</summary>
    Unknown,

    /// <summary>The capacitor sits between pickup coil and winding: 1/V² is a parabola in 1/C. The classic arrangement.</summary>
    Series,

    /// <summary>The level is taken across the capacitor: 1/V² is a parabola in C.</summary>
    Shunt,

    /// <summary>Neither: a peak and a trap, as a tapped coil gives.</summary>
    General,
}
