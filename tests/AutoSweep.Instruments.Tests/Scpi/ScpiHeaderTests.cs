using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Tests.Scpi;

/// <summary>Header matching: SCPI-1999, volume 1, 6.2 (short and long form, nothing between; optional nodes; suffixes).</summary>
public sealed class ScpiHeaderTests
{
    [Theory]
    [InlineData("[SENSe:]VOLTage:AC:RANGe[:UPPer]", "VOLT:AC:RANG")]
    [InlineData("[SENSe:]VOLTage:AC:RANGe[:UPPer]", "sens:volt:ac:rang:upp")]
    [InlineData("[SENSe:]VOLTage:AC:RANGe[:UPPer]", ":SENSe:VOLTage:AC:RANGe:UPPer")]
    [InlineData("[SENSe:]VOLTage:AC:RANGe[:UPPer]", "Voltage:ac:Range")]
    [InlineData("ROUTe:CLOSe:STATe?", "ROUT:CLOS:STAT?")]
    [InlineData("SYSTem:ERRor[:NEXT]?", "SYST:ERR?")]
    [InlineData("*IDN?", "*idn?")]
    [InlineData("OUTPut<n>[:STATe]", "OUTP2:STAT")]
    [InlineData("OUTPut<n>[:STATe]", "OUTPUT")]
    public void A_header_is_taken_in_its_short_or_long_form(string notation, string header) =>
        Assert.True(new ScpiHeader(notation).Matches(header));

    [Theory]
    [InlineData("[SENSe:]VOLTage:AC:RANGe[:UPPer]", "VOLTA:AC:RANG")] // half-long: -113 (GDM-9060 manual)
    [InlineData("[SENSe:]VOLTage:AC:RANGe[:UPPer]", "VOL:AC:RANG")]
    [InlineData("[SENSe:]VOLTage:AC:RANGe[:UPPer]", "VOLT:AC")]
    [InlineData("[SENSe:]VOLTage:AC:RANGe[:UPPer]", "VOLT:AC:RANG:UPP:UPP")]
    [InlineData("[SENSe:]VOLTage:AC:RANGe[:UPPer]", "VOLT:AC:RANG?")]
    [InlineData("ROUTe:CLOSe:STATe?", "ROUT:CLOS:STAT")]
    [InlineData("READ?", "READS?")]
    [InlineData("SYSTem:RELays?", "SYST2:REL?")]
    [InlineData("*IDN?", ":*IDN?")]
    public void Nothing_else_is_taken(string notation, string header) => Assert.False(new ScpiHeader(notation).Matches(header));

    [Theory]
    [InlineData("")]
    [InlineData("[SENSe:VOLTage")]
    [InlineData("VOLT AC")]
    [InlineData("voltage")]
    public void What_is_no_notation_is_refused(string notation) => Assert.Throws<ArgumentException>(() => new ScpiHeader(notation));
}
