using AutoSweep.Core.Decades;

namespace AutoSweep.Sources;

/// <summary>A box as it really is: in each dial four capacitors of 1, 2, 3 and 4 steps, each anywhere within the tolerance.</summary>
/// <param name="Description">What is printed on it.</param>
/// <param name="Seed">Of its capacitors.</param>
public sealed class HandBox(DecadeBox description, int seed)
{
    // Capacitors that make each position, as switched in usual boxes (a textbook arrangement, from memory).
    private static readonly int[][] Made = [[], [1], [2], [3], [4], [1, 4], [2, 4], [3, 4], [1, 3, 4], [2, 3, 4], [1, 2, 3, 4]];

    private readonly double[][] _errors = Errors(description, new(seed));

    /// <summary>A box of three dials of ten steps, 1 %, as it is printed: 100 nF, 10 nF, 1 nF and one of 100 pF.</summary>
    public static DecadeBox OnePercent { get; } = new()
    {
        Decades = [new() { StepPicofarads = 100_000 }, new() { StepPicofarads = 10_000 }, new() { StepPicofarads = 1000 }, new() { StepPicofarads = 100 }],
    };

    /// <summary>What is printed on it.</summary>
    public DecadeBox Description => description;

    /// <summary>What is in circuit at a setting, in picofarads.</summary>
    public double Picofarads(DialSetting setting) => description.StrayPicofarads + setting.Positions.Select((position, dial) => Dial(dial, position)).Sum();

    /// <summary>The box's description after somebody has measured each position with a meter that is off by so much, as one standard deviation.</summary>
    public DecadeBox Measured(double relativeNoise, Random random) => description with
    {
        Decades = [.. description.Decades.Select((decade, dial) => decade with
        {
            MeasuredPicofarads = [.. Enumerable.Range(1, decade.Steps).Select(position => Dial(dial, position) * (1 + (relativeNoise * HandBench.Gaussian(random))))],
        })],
    };

    private double Dial(int dial, int position) =>
        Made[position].Sum(steps => steps * description.Decades[dial].StepPicofarads * (1 + _errors[dial][steps - 1]));

    private static double[][] Errors(DecadeBox box, Random random) =>
        [.. box.Decades.Select(_ => Enumerable.Range(0, 4).Select(_ => box.TolerancePercent / 100 * ((2 * random.NextDouble()) - 1)).ToArray())];
}
