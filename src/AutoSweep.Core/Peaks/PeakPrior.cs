using AutoSweep.Core.Generator;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>What is believed of an output's peak before its first reading.</summary>
public sealed record PeakPrior
{
    /// <summary>The capacitance at which the peak is expected.</summary>
    public required Capacitance Expected { get; init; }

    /// <summary>One standard deviation of the natural logarithm of peak over expected; 0.25 covers ±40 % at 90 %.</summary>
    /// <value>Default 0.25. A group whose outputs have been swept narrows it.</value>
    public double LogSpread { get; init; } = 0.25;

    /// <summary>The median of the expected Q.</summary>
    /// <value>Default 10, the middle of 4 to 25 in ratio (trade figures give 5 to 12, inferred).</value>
    public double Q { get; init; } = 10;

    /// <summary>One standard deviation of the natural logarithm of Q over its median.</summary>
    public double LogSpreadOfQ { get; init; } = 0.6;

    /// <summary>Natural-logarithm odds of the series law over the shunt law that earlier outputs of the group have gathered.</summary>
    /// <value>Default 0: nothing known. Positive speaks for series.</value>
    public double LogOddsSeriesOverShunt { get; init; }

    /// <summary>Natural-logarithm odds that neither law holds over the better of the two.</summary>
    /// <value>Default −1.2: about one output in five or six.</value>
    public double LogOddsGeneral { get; init; } = -1.2;
}
