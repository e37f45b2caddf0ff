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

    public MainsWander(MainsDefinition mains, int seed)
    {
        (this.mains, random) = (mains, new Random(seed));
        deviations = [Normal.Sample(random, 0, 1)];
    }

    public double HertzAt(TimeSpan time)
    {
        var place = Math.Max(0, time.TotalSeconds / GridSeconds);
        var index = (int)place;
        while (deviations.Count <= index + 1)
            deviations.Add(Next(deviations[^1]));
        var deviation = deviations[index] + ((place - index) * (deviations[index + 1] - deviations[index]));
        return mains.Hertz * (1 + (mains.WanderPercent / 100 * deviation));
    }

    private double Next(double last)
    {
        var kept = Math.Exp(-GridSeconds / mains.WanderSeconds);
        return (kept * last) + (Math.Sqrt(1 - (kept * kept)) * Normal.Sample(random, 0, 1));
    }
}
