using AutoSweep.Instruments.Fixture;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>Calibrations for tests; the figures are invented.</summary>
public static class Calibrations
{
    /// <summary>The usual box: four decades of 1-2-2-4 from 100 pF on, exact values, 150 pF of stray.</summary>
    public static FixtureCalibration Ideal { get; } = new()
    {
        FixtureSerial = "F-0007",
        StrayPicofarads = 150,
        RelaysPicofarads = [100, 200, 200, 400, 1e3, 2e3, 2e3, 4e3, 10e3, 20e3, 20e3, 40e3, 100e3, 200e3, 200e3, 400e3],
    };

    /// <summary>The same box with parts a few per cent off, seeded.</summary>
    public static FixtureCalibration Real(int seed)
    {
        var random = new Random(seed);
        return Ideal with { RelaysPicofarads = [.. Ideal.RelaysPicofarads.Select(value =>
            Math.Round(value * (0.96 + (0.08 * random.NextDouble())), 1))] };
    }
}
