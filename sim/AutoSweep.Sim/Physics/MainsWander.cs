using AutoSweep.Sim.Benches;
using MathNet.Numerics.Distributions;

namespace AutoSweep.Sim.Physics;

/// <summary>The mains frequency over time: a slow random walk that is drawn back to its mean (Ornstein-Uhlenbeck).</summary>
/// <remarks>
/// Drawn on a fixed grid, so that the course of a seed does not depend on when it is asked for. Not for two threads at once.
/// </remarks>
internal sealed class MainsWander
{
    private const double GridSeconds = 0.5;
    private readonly MainsDefinition mains;
    private readonly Random random;
    private readonly List<double> deviations;

    // Deviation-seconds from the start to each place of the grid.
    private readonly List<double> sums = [0];

    public MainsWander(MainsDefinition mains, int seed)
    {
        (this.mains, random) = (mains, new Random(seed));
        deviations = [Normal.Sample(random, 0, 1)];
    }

    public double HertzAt(TimeSpan time)
    {
        var (index, beyond) = Place(time);
        return mains.Hertz * (1 + (mains.WanderPercent / 100 * Deviation(index, beyond)));
    }

    /// <summary>How many periods have passed since the start: what a motor in step has turned by.</summary>
    public double PeriodsUntil(TimeSpan time)
    {
        var (index, beyond) = Place(time);
        var sum = sums[index] + (GridSeconds * beyond * (deviations[index] + Deviation(index, beyond)) / 2);
        return mains.Hertz * (Math.Max(0, time.TotalSeconds) + (mains.WanderPercent / 100 * sum));
    }

    private (int Index, double Beyond) Place(TimeSpan time)
    {
        var place = Math.Max(0, time.TotalSeconds / GridSeconds);
        var index = (int)place;
        while (deviations.Count <= index + 1)
        {
            deviations.Add(Next(deviations[^1]));
            sums.Add(sums[^1] + (GridSeconds * (deviations[^2] + deviations[^1]) / 2));
        }

        return (index, place - index);
    }

    private double Deviation(int index, double rest) => deviations[index] + (rest * (deviations[index + 1] - deviations[index]));

    private double Next(double last)
    {
        var kept = Math.Exp(-GridSeconds / mains.WanderSeconds);
        return (kept * last) + (Math.Sqrt(1 - (kept * kept)) * Normal.Sample(random, 0, 1));
    }
}
