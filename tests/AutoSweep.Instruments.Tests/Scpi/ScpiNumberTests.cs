using System.Globalization;
using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Tests.Scpi;

public sealed class ScpiNumberTests
{
    [Theory] // IEEE 488.2, 8.7.2 to 8.7.4: NR1, NR2, NR3
    [InlineData("-12", -12)]
    [InlineData("+1.23", 1.23)]
    [InlineData("-4.5E-02", -0.045)]
    [InlineData("+5.37200000E-03", 0.005372)]
    [InlineData(" 0.5 ", 0.5)]
    [InlineData(".5", 0.5)]
    [InlineData("1e3", 1000)]
    public void Every_form_of_number_is_read(string raw, double value) =>
        Assert.Equal(new(MeterReadingKind.Value, value, raw), ScpiNumber.Read(raw));

    [Theory] // SCPI-1999, volume 1, 7.2.1.4 and 7.2.1.5: infinity is 9.9E37, not-a-number 9.91E37; makers print them variously
    [InlineData("9.9E37", MeterReadingKind.Overload)]
    [InlineData("+9.90000000E+37", MeterReadingKind.Overload)]
    [InlineData("-9.9E37", MeterReadingKind.Overload)]
    [InlineData("9.99999E37", MeterReadingKind.Overload)] // TX6000 manual, page 89
    [InlineData("INF", MeterReadingKind.Overload)]
    [InlineData("OL", MeterReadingKind.Overload)]
    [InlineData("9.91E37", MeterReadingKind.NoData)]
    [InlineData("+9.91000000E+37", MeterReadingKind.NoData)]
    [InlineData("NAN", MeterReadingKind.NoData)]
    [InlineData("", MeterReadingKind.Invalid)]
    [InlineData("1,5", MeterReadingKind.Invalid)]
    [InlineData("1.5 mV", MeterReadingKind.Invalid)]
    [InlineData("1 500", MeterReadingKind.Invalid)]
    [InlineData("∞", MeterReadingKind.Invalid)]
    [InlineData("1E999", MeterReadingKind.Overload)]
    [InlineData("E", MeterReadingKind.Invalid)]
    public void A_sentinel_or_nonsense_never_passes_as_a_value(string raw, MeterReadingKind kind)
    {
        var reading = ScpiNumber.Read(raw);
        Assert.Equal(kind, reading.Kind);
        Assert.True(double.IsNaN(reading.Value));
    }

    [Theory]
    [InlineData("1.0E+9")]
    [InlineData("+1.000000E+09")]
    [InlineData("over range")]
    public void A_drivers_own_sentinels_count_too(string raw) =>
        Assert.Equal(MeterReadingKind.Overload, ScpiNumber.Read(raw, ["1E9", "over range"]).Kind);

    [Fact]
    public void A_machine_with_a_decimal_comma_reads_and_writes_the_same()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal("0,5", 0.5.ToString("R", CultureInfo.CurrentCulture)); // so the culture is really there
            Assert.Equal(0.005372, ScpiNumber.Read("+5.37200000E-03").Value);
            Assert.Equal("0.1", ScpiNumber.Format(0.1));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
