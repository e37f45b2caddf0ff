using AutoSweep.Sim.Commands;

namespace AutoSweep.Sim.Tests.Commands;

public class UnplugOrderTests
{
    [Theory]
    [InlineData("unplug meter 3", UnplugOrder.Plug.Meter, 3)]
    [InlineData("unplug fixture 0.5", UnplugOrder.Plug.Fixture, 0.5)]
    [InlineData("  unplug  capacitanceMeter  20 ", UnplugOrder.Plug.CapacitanceMeter, 20)]
    public void A_line_names_a_plug_and_simulated_seconds(string line, object what, double seconds) =>
        Assert.Equal(new UnplugOrder((UnplugOrder.Plug)what, TimeSpan.FromSeconds(seconds)), UnplugOrder.Read(line));

    [Fact]
    public void Without_a_number_the_plug_stays_out_until_a_line_pushes_it_in()
    {
        Assert.Equal(new(UnplugOrder.Plug.Meter, Timeout.InfiniteTimeSpan), UnplugOrder.Read("unplug meter"));
        Assert.Equal(new(UnplugOrder.Plug.Meter, null), UnplugOrder.Read("plug meter"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("unplug")]
    [InlineData("plug motor")]
    [InlineData("unplug motor 3")]
    [InlineData("unplug 1 3")]
    [InlineData("unplug meter 0")]
    [InlineData("unplug meter 3 s")]
    [InlineData("plug meter 3")]
    public void Any_other_line_is_none(string line) => Assert.Null(UnplugOrder.Read(line));
}
