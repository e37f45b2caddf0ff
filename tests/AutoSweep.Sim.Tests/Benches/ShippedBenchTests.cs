using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Network;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Benches;

/// <summary>The benches in sim/benches: made again they come out the same, and their truths hold.</summary>
public class ShippedBenchTests
{
    public static TheoryData<string> Names => [.. Shipped];

    internal static string[] Shipped => ["demo", "small", "no-amplifier", "classic-60"];

    /// <summary>The commands that made them, as docs/simulated-bench.md lists them.</summary>
    internal static string[] Order(string name) => name switch
    {
        "demo" => ["--profile", "invented-quillmark-93-60hz", "--seed", "20261", "--coupled", "4", "--tapped", "3", "--trouble", "--parts", "200"],
        "small" => ["--profile", "invented-smallbench-14-60hz", "--seed", "7", "--parts", "12"],
        "no-amplifier" => ["--profile", "invented-smallbench-14-60hz", "--seed", "11", "--gain", "1"],
        _ => ["--profile", "classic-91-60hz", "--seed", "60", "--trouble"],
    };

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Made_again_it_is_the_same_file(string name)
    {
        using var folder = new TemporaryFolder();
        var shipped = BenchFile.Read(BenchLocator.Bench(name));
        var (code, _, errors) = await SimProgram.RunAsync(
            ["make", "--name", name, "--about", shipped.About, "--out", folder.PathOf(name + ".json"), .. Order(name)]);
        Assert.Equal((0, ""), (code, errors));
        foreach (var file in new[] { name + ".json", name + ".calibration.json" })
        {
            Assert.Equal(
                await File.ReadAllTextAsync(Path.Combine(Path.GetDirectoryName(BenchLocator.Bench(name))!, file)),
                await File.ReadAllTextAsync(folder.PathOf(file)));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_truth_is_a_peak_with_half_power_points_where_it_says(string name)
    {
        var bench = BenchFile.Read(BenchLocator.Bench(name));
        var profile = GeneratorProfileLibrary.Open(bench.Profile);
        foreach (var (truth, output) in Peaks(bench))
        {
            // The network itself, not the formula that found the peak.
            var network = new OutputNetwork(output, bench.FrontEnd);
            var hertz = profile.ToneOf(profile.Outputs.Single(wheel => wheel.Number == output.Number)).Hertz;
            double Level(double picofarads) =>
                output.Source.EmfMillivolts * network.Transfer(hertz, picofarads * 1e-12, bench.Fixture.LossTangent).Magnitude;
            var (peak, width) = (truth.Picofarads, truth.HalfWidthPicofarads);
            Assert.Equal(truth.Millivolts, Level(peak), 1e-4);
            Assert.True(Level(peak - (0.02 * width)) < Level(peak), $"{name} {output.Number}, below");
            Assert.True(Level(peak + (0.02 * width)) < Level(peak), $"{name} {output.Number}, above");
            var half = truth.Millivolts / Math.Sqrt(2);
            var upper = Crossing(picofarads => Level(picofarads) - half, peak, peak + (3 * width));
            var lower = Crossing(picofarads => half - Level(picofarads), Math.Max(peak - (3 * width), 0), peak);
            // The file is rounded to a tenth of a picofarad, the level to a hundredth of a microvolt.
            Assert.Equal(width, (upper - lower) / 2, 0.2);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Its_filtered_outputs_are_of_the_kind_that_generators_have(string name)
    {
        var bench = BenchFile.Read(BenchLocator.Bench(name));
        foreach (var (truth, _) in Peaks(bench))
        {
            Assert.InRange(truth.Q, 4, 25);
            Assert.InRange(truth.Millivolts, 3, 15);
            Assert.InRange(truth.Picofarads, 40_000, 400_000);
        }
    }

    [Fact]
    public void The_demo_has_a_whole_generator_with_trouble_in_it()
    {
        var demo = BenchFile.Read(BenchLocator.Bench("demo"));
        Assert.True(demo.Outputs.Count >= 90);
        Assert.True(Peaks(demo).Count() >= 43);
        // Every kind that acts while the bench is served; the others are for benches that are made to be diagnosed.
        Assert.Equal([FaultKind.Dead, FaultKind.HumOnly, FaultKind.Swapped, FaultKind.Unsteady], demo.Faults.Select(fault => fault.Kind).Distinct().Order());
        Assert.Equal(Enum.GetValues<Arrangement>(), Peaks(demo).Select(pair => pair.Output.Filter!.Arrangement).Distinct().Order());
        Assert.Contains(demo.Hands.Survey, step => step.Note == "slow");
        Assert.Contains(demo.Hands.Sweep, step => step.Note?.StartsWith("wrong", StringComparison.Ordinal) == true);
        Assert.Contains(demo.Hands.Sweep, step => step.Note?.StartsWith("repeated", StringComparison.Ordinal) == true);
    }

    [Fact]
    public void The_demos_drawers_hold_200_parts_of_e12_values_within_their_tolerance_and_a_little_drift()
    {
        var parts = BenchFile.Read(BenchLocator.Bench("demo")).Parts;
        Assert.Equal(200, parts.Count);
        Assert.All(parts, part => Assert.InRange(
            Math.Abs((part.Picofarads / part.NominalPicofarads) - 1), 0, (part.TolerancePercent / 100) + 0.025));
        // IEC 60063, E12.
        double[] steps = [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82];
        Assert.All(parts, part => Assert.Contains(
            Math.Round(part.NominalPicofarads / Math.Pow(10, Math.Floor(Math.Log10(part.NominalPicofarads)) - 1)), steps));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Its_calibration_sheet_is_near_the_truth_but_not_the_truth(string name)
    {
        var bench = BenchFile.Read(BenchLocator.Bench(name));
        var sheet = BenchFile.ReadCalibration(BenchFile.CalibrationPath(BenchLocator.Bench(name)));
        Assert.Equal(bench.Fixture.Serial, sheet.FixtureSerial);
        var errors = sheet.RelaysPicofarads.Zip(bench.Fixture.Relays, (measured, relay) => (measured / relay.Picofarads) - 1).ToList();
        Assert.All(errors, error => Assert.InRange(error, -0.0015, 0.0015));
        Assert.Contains(errors, error => Math.Abs(error) > 1e-5);
    }

    private static IEnumerable<(PeakTruth Truth, OutputDefinition Output)> Peaks(BenchDefinition bench) =>
        from truth in bench.Truth.Outputs
        where truth.Peak is not null
        select (truth.Peak, bench.Outputs.Single(output => output.Number == truth.Output));

    private static double Crossing(Func<double, double> falling, double low, double high)
    {
        for (var i = 0; i < 100; i++)
        {
            var middle = (low + high) / 2;
            if (falling(middle) > 0) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }
}
