using AutoSweep.Core.Peaks;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Tests.Peaks.Support;
using AutoSweep.Sources;
using AutoSweep.Sources.Networks;

namespace AutoSweep.Core.Tests.Peaks;

/// <summary>Networks, laws and search against ngspice's AC analysis of our own netlists (tests/Reference/ngspice; stored with ngspice 39).</summary>
/// <remarks>
/// The peaks are figures computed at 50 digits from the same circuits with mpmath and checked against ngspice to 5e-15 when this was
/// written; half-widths likewise.
/// </remarks>
public class SpiceTests
{
    private static readonly Dictionary<string, INetwork> Networks = new()
    {
        ["shunt_coil"] = new ShuntNetwork(Omega(740), 150, 0.44, 1e15, 0),
        ["series_winding"] = new CoupledNetwork(Omega(1480), 25, 0.01, 60, 0.1, 8, 0.01, 0.95, 500, 0, 0),
        // The netlist drives the secondary out of its dot, the mesh equations into it.
        ["stray_emf"] = new CoupledNetwork(Omega(1480), 25, 0.01, 60, 0.1, 8, 0.01, 0.95, 500, -0.08, 0),
        ["tapped_coil"] = new TappedNetwork(Omega(2000), 120, 0.03, 15, 0.02, 1e15, 0),
    };

    public static TheoryData<string> Circuits => ["shunt_coil", "series_winding", "stray_emf", "tapped_coil", "shunt_secondary"];

    // The stored figures carry 16 digits; 1e-12 leaves room for another build of ngspice to round otherwise.
    [SpiceTheory]
    [MemberData(nameof(Circuits))]
    public void Stored_levels_are_what_ngspice_gives_today(string name)
    {
        var (stored, now) = (SpiceCircuit.Stored(name), SpiceCircuit.Run(name));
        Assert.Equal(stored.Count, now.Count);
        Assert.All(stored.Zip(now), pair => AssertRelative(pair.First.Volts, pair.Second.Volts, 1e-12));
    }

    [Theory]
    [InlineData("shunt_coil")]
    [InlineData("series_winding")]
    [InlineData("stray_emf")]
    [InlineData("tapped_coil")]
    public void The_complex_networks_of_the_random_sources_agree_with_ngspice(string name) =>
        Assert.All(SpiceCircuit.Stored(name), point => AssertRelative(point.Volts, Networks[name].Output(point.Farads).Magnitude, 1e-9));

    [Fact]
    public void The_shunt_law_is_exact_for_a_capacitor_across_a_coil() =>
        AssertLaw("shunt_coil", TunedResponse.Shunt(104_567.24401, 13.6387009068));

    [Fact]
    public void The_shunt_law_is_exact_behind_a_leaky_transformer() =>
        AssertLaw("shunt_secondary", TunedResponse.Shunt(249_339.69176, 249.33969176 / 159.02498965));

    [Fact]
    public void The_series_law_is_exact_for_the_classic_arrangement() =>
        AssertLaw("series_winding", TunedResponse.Series(108_002.349466, 4.2615468665));

    [Fact]
    public void The_general_law_is_exact_for_a_tapped_coil()
    {
        // The level vanishes at the complex capacitance that cancels the lower coil: 1/(jωC) = −(R2 + jωL2).
        var trap = 1e12 / (-System.Numerics.Complex.ImaginaryOne * Omega(2000) * new System.Numerics.Complex(15, Omega(2000) * 0.02));
        var toTrap = 1 / (1 - trap / 117_614.789014);
        var slope = toTrap.Real;
        var curvature = toTrap.Magnitude * toTrap.Magnitude;
        // Q from one point, the lower half-power point at 87.096131473 nF: Q²y² = 1 + 2·slope·y + curvature·y².
        var y = 87.096131473 / 117.614789014 - 1;
        var q = Math.Sqrt((1 + 2 * slope * y + curvature * y * y) / (y * y));
        AssertLaw("tapped_coil", new TunedResponse(117_614.789014, q, slope, curvature));
    }

    [Theory]
    [InlineData("shunt_coil", 90, 104.56724401, 7.66695044671)]
    [InlineData("shunt_coil", 140, 104.56724401, 7.66695044671)]
    [InlineData("series_winding", 105, 108.002349466, 26.82)]
    [InlineData("series_winding", 150, 108.002349466, 26.82)]
    [InlineData("tapped_coil", 105, 117.614789014, 26.946)]
    [InlineData("tapped_coil", 160, 117.614789014, 26.946)]
    public void The_search_finds_the_worked_peak_from_ngspice_readings(string name, double expected, double peak, double halfWidth)
    {
        var result = Search(name, expected);
        Assert.Equal(PeakStopReason.BoundReached, result.Reason);
        // Readings without noise: 0.02 half-widths, 0.002 dB, are left for beliefs that pull.
        Assert.InRange(result.Peak!.Value.Nanofarads, peak - 0.02 * halfWidth, peak + 0.02 * halfWidth);
        Assert.InRange(result.HalfWidthPicofarads * 1e-3, 0.95 * halfWidth, 1.05 * halfWidth);
    }

    [Fact]
    public void The_search_finds_the_peak_of_a_network_on_which_no_simple_law_holds()
    {
        var truth = TruePeak.Of(Networks["stray_emf"])!;
        var result = Search("stray_emf", 120);
        Assert.InRange((result.Peak!.Value.Picofarads - truth.Picofarads) / truth.HalfWidthPicofarads, -0.03, 0.03);
    }

    // The stored capacitances stand for a coarse box: the nearest is set, and told.
    private static PeakResult Search(string name, double expectedNanofarads)
    {
        var levels = SpiceCircuit.Stored(name);
        var search = new PeakSearch(
            new PeakPrior { Expected = Capacitance.FromNanofarads(expectedNanofarads) },
            new PeakSearchOptions { Smallest = Capacitance.FromNanofarads(40), Largest = Capacitance.FromNanofarads(300) });
        while (search.Next() is PeakStep.Read read)
        {
            var (farads, volts) = levels.MinBy(level => Math.Abs(level.Farads - read.Capacitance.Farads));
            search.Tell(new(Capacitance.FromFarads(farads), new(volts * 1e-3), 0.002, TimeSpan.Zero));
        }
        return ((PeakStep.Done)search.Next()).Result;
    }

    // The worked figures carry 12 digits.
    private static void AssertLaw(string name, TunedResponse law)
    {
        var levels = SpiceCircuit.Stored(name);
        var (farads, volts) = levels.MaxBy(level => level.Volts);
        var top = volts / Math.Sqrt(law.PowerRatio(farads * 1e12));
        Assert.All(levels, level => AssertRelative(level.Volts, top * Math.Sqrt(law.PowerRatio(level.Farads * 1e12)), 1e-8));
    }

    private static double Omega(double hertz) => 2 * Math.PI * hertz;

    private static void AssertRelative(double expected, double actual, double tolerance) =>
        Assert.True(Math.Abs(actual / expected - 1) < tolerance, $"expected {expected}, got {actual}");
}
