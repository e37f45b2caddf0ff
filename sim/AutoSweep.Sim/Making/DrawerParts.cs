using AutoSweep.Sim.Benches;
using MathNet.Numerics.Distributions;

namespace AutoSweep.Sim.Making;

/// <summary>The LCR meter and the shop's drawers of film capacitors.</summary>
internal static class DrawerParts
{
    // IEC 60063: E12.
    private static readonly double[] E12 = [1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];

    private static readonly double[] Nominals =
    [
        .. from decade in (double[])[1000, 10_000, 100_000]
           from step in E12
           let nominal = Math.Round(decade * step)
           where nominal is >= 4700 and <= 220_000
           select nominal,
    ];

    public static CapacitanceMeterDefinition Meter(string name, Random random)
    {
        var lead = Math.Round(8 + (10 * random.NextDouble()), 2);
        return new()
        {
            Identity = "AutoSweep,Simulated LCR meter,SIM-L-" + name + ",1.0",
            GainErrorPercent = Math.Round(0.05 * ((2 * random.NextDouble()) - 1), 4),
            NoisePercentOfReading = 0.01,
            NoisePicofarads = 0.01,
            DissipationNoise = 0.0001,
            LeadPicofarads = lead,
            OpenCorrectionPicofarads = Math.Round(lead + (0.05 * ((2 * random.NextDouble()) - 1)), 3),
        };
    }

    public static IReadOnlyList<PartDefinition> Draw(int count, Random random) =>
        [.. Enumerable.Range(0, count).Select(_ => Part(Nominals[random.Next(Nominals.Length)], random.Next(2) == 0 ? 5 : 10, random))];

    // Within its tolerance when it was made (a third of it as standard deviation), and drifted a little since (0.5 %: film, from memory).
    private static PartDefinition Part(double nominal, double tolerance, Random random)
    {
        var made = Math.Clamp(Normal.Sample(random, 0, tolerance / 3), -tolerance, tolerance);
        return new()
        {
            NominalPicofarads = nominal,
            TolerancePercent = tolerance,
            Picofarads = Math.Round(nominal * (1 + (made / 100)) * (1 + Normal.Sample(random, 0, 0.005)), 1),
            LossTangent = Math.Round(0.0003 + (0.004 * Math.Pow(random.NextDouble(), 2)), 5),
        };
    }
}
