using AutoSweep.Sim.Benches;
using MathNet.Numerics.Distributions;

namespace AutoSweep.Sim.Making;

/// <summary>The usual relay fixture: 16 relays, four decades of 1-2-2-4 from 100 pF, and its maker's calibration.</summary>
internal static class FixtureParts
{
    /// <summary>Polypropylene at 1 kHz (trade data: 0.0005).</summary>
    public const double LossTangent = 0.0005;

    private const double TolerancePercent = 3;

    /// <summary>Basic error of a bench capacitance meter (trade data: 0.05 to 0.1 %).</summary>
    private const double CalibrationSdPercent = 0.025;

    private static readonly double[] Weights = [1, 2, 2, 4];
    private static readonly double[] Decades = [100, 1000, 10_000, 100_000];

    public static FixtureDefinition Draw(string name, Random random) => new()
    {
        Serial = "SIM-F-" + name,
        StrayPicofarads = Math.Round(20 + (380 * random.NextDouble()), 1),
        LossTangent = LossTangent,
        ReleaseMilliseconds = 3,
        BounceMilliseconds = 5,
        Relays =
        [
            .. from decade in Decades
               from weight in Weights
               let nominal = decade * weight
               select new RelayDefinition
               {
                   NominalPicofarads = nominal,
                   Picofarads = Math.Round(nominal * (1 + (TolerancePercent / 100 * ((2 * random.NextDouble()) - 1))), 2),
               },
        ],
    };

    public static CalibrationSheet Measured(FixtureDefinition fixture, Random random) => new()
    {
        FixtureSerial = fixture.Serial,
        StrayPicofarads = Measured(fixture.StrayPicofarads, random),
        RelaysPicofarads = [.. fixture.Relays.Select(relay => Measured(relay.Picofarads, random))],
        Date = new(2026, 1, 15),
        Meter = "an invented capacitance meter, at 1 kHz",
        StrayStandardUncertaintyPicofarads = Uncertainty(fixture.StrayPicofarads),
        RelayStandardUncertaintiesPicofarads = [.. fixture.Relays.Select(relay => Uncertainty(relay.NominalPicofarads))],
    };

    // The meter's part of the value and a rectangular tenth of a picofarad (JCGM 100:2008, 4.3.7: a / sqrt 3 with a = 0.05).
    private static double Uncertainty(double picofarads) =>
        Math.Round(Math.Sqrt(Math.Pow(CalibrationSdPercent / 100 * picofarads, 2) + (0.05 * 0.05 / 3)), 2);

    // Besides its part of the value the meter rounds to a tenth of a picofarad.
    private static double Measured(double picofarads, Random random) =>
        Math.Round(picofarads * (1 + (CalibrationSdPercent / 100 * Normal.Sample(random, 0, 1))), 1);
}
