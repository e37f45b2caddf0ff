using MathNet.Numerics.Distributions;

namespace AutoSweep.Sim.Hands;

/// <summary>How well hands move a magnet rod. All of it is invented; no page was found that measures hands.</summary>
internal sealed class RodGrip(Random random)
{
    /// <summary>One standard deviation of a distance, as a share of it.</summary>
    private const double Share = 0.2;

    /// <summary>The lightest tap, in millimetres.</summary>
    private const double Smallest = 0.005;

    /// <summary>How much too far out they pull before they push back, in millimetres.</summary>
    private const double TooFar = 0.02;

    /// <summary>One standard deviation of what a lock shifts more or less than usual, in millimetres.</summary>
    private const double LockingSd = 0.002;

    /// <summary>The pushes, in millimetres outward, that are wanted for a move: out is a pull a little too far and a push back, in one push.</summary>
    public static IReadOnlyList<double> Wanted(double outward) => outward > 0 ? [outward + TooFar, -TooFar] : [outward];

    /// <summary>What becomes of a wanted push.</summary>
    public double Made(double wanted) => Math.Max(Math.Abs(wanted), Smallest) * Math.Max(0, 1 + Normal.Sample(random, 0, Share)) * Math.Sign(wanted);

    /// <summary>What a lock shifts more or less than usual, in millimetres.</summary>
    public double LockShift() => Normal.Sample(random, 0, LockingSd);
}
