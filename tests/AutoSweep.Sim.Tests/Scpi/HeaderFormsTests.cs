using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Tests.Scpi;

/// <summary>Short and long forms and optional nodes (SCPI-1999 volume 1, 6.2.1 and 6.2.4).</summary>
public class HeaderFormsTests
{
    [Fact]
    public void Both_forms_of_each_node_and_nothing_between_them_are_known() =>
        Assert.Equal(["SYST:ERR", "SYST:ERROR", "SYSTEM:ERR", "SYSTEM:ERROR"], HeaderForms.Of("SYSTem:ERRor").Order());

    [Fact]
    public void An_optional_node_may_be_left_out_at_either_end() =>
        Assert.Equal(
            ["A", "A:UPP", "A:UPPER", "SENS:A", "SENS:A:UPP", "SENS:A:UPPER", "SENSE:A", "SENSE:A:UPP", "SENSE:A:UPPER"],
            HeaderForms.Of("[SENSe:]A[:UPPer]").Order());
}
