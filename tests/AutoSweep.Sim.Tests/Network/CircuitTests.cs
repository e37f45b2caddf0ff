using AutoSweep.Sim.Network;
using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Network;

/// <summary>The network solver against ngspice and closed forms worked out at 50 digits (Reference/network-examples.json).</summary>
public class CircuitTests
{
    public static TheoryData<string> Examples => [.. NetworkExample.Names];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Levels_of_the_worked_networks_agree_with_the_closed_forms_and_with_ngspice(string name)
    {
        var example = NetworkExample.Of(name);
        foreach (var (label, farads, level, ngspice) in example.Points)
        {
            var solved = example.Network().Transfer(example.Hertz, farads, 0).Magnitude;
            Assert.True(Math.Abs((solved / level) - 1) < 1e-11, $"{name} {label}: {solved} against {level}");
            Assert.True(Math.Abs((solved / ngspice) - 1) < 1e-11, $"{name} {label}: {solved} against ngspice {ngspice}");
        }
    }

    [NgspiceFact]
    public void Levels_of_every_filtered_output_of_the_small_bench_agree_with_ngspice_run_now()
    {
        var bench = TestBench.Small();
        foreach (var output in bench.Outputs.Where(output => output.Filter is not null))
        {
            var network = new OutputNetwork(output, bench.FrontEnd);
            var hertz = TestBench.Profile.ToneOf(TestBench.Profile.Outputs.Single(wheel => wheel.Number == output.Number)).Hertz;
            foreach (var farads in new[] { 30e-9, 110e-9, 400e-9 })
            {
                var circuit = network.Build(farads, 0.0005, out var terminal);
                var expected = Ngspice.Level(circuit, terminal, hertz);
                Assert.Equal(1, network.Transfer(hertz, farads, 0.0005).Magnitude / expected, 1e-9);
            }
        }
    }

    [Fact]
    public void A_node_that_hangs_in_the_air_is_refused()
    {
        var circuit = new Circuit();
        circuit.Emf();
        var lonely = circuit.Node();
        Assert.Throws<InvalidOperationException>(() => circuit.Voltage(lonely, 1000));
    }
}
