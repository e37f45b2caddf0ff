using AutoSweep.Instruments.Meters;

namespace AutoSweep.Drivers.Tests;

/// <summary>Figures of the driver files against those that makers have printed; the source stands beside each. What is from memory is not
/// tested here: it is marked so in the file.</summary>
public sealed class PublishedFiguresTests
{
    // Truevolt operating and service guide (34460A), p. 373: default settling delays of the filters.
    [Theory]
    [InlineData(3, 2.5)]
    [InlineData(20, 0.625)]
    [InlineData(200, 0.025)]
    public void The_34460A_settles_as_its_guide_says(double hertz, double seconds) =>
        Assert.Equal(seconds, Level("dmm-34460a").Bandwidths.Single(one => one.Hertz.Equals(hertz)).SettleSeconds);

    // 34980A help, [SENSe:]VOLTage:AC:BANDwidth, for the same filters as the 34401A's: 7, 1 and 0.12 s by default. Ours is the AC speed tip's 0.1 s.
    [Theory]
    [InlineData(3, 7)]
    [InlineData(20, 1)]
    [InlineData(200, 0.12)]
    public void The_34401A_type_settles_as_a_sibling_s_help_says_to_a_fifth(double hertz, double seconds) =>
        Assert.InRange(Level("scpi-dmm").Bandwidths.Single(one => one.Hertz.Equals(hertz)).SettleSeconds, 0.8 * seconds, 1.2 * seconds);

    // GDM-8261A user manual, p. 223: 1.2 s a reading, 3.38 and 30 readings a second, with filters from 3, 20 and 200 Hz.
    [Theory]
    [InlineData("S", 3, 1.2)]
    [InlineData("M", 20, 1 / 3.38)]
    [InlineData("F", 200, 1 / 30.0)]
    public void The_GDM_8261A_is_given_three_of_its_readings(string rate, double hertz, double secondsEach)
    {
        var bandwidth = Level("dmm-gdm8200").Bandwidths.Single(one => one.Argument == rate);
        Assert.Equal(hertz, bandwidth.Hertz);
        Assert.InRange(bandwidth.SettleSeconds, (3 * secondsEach) - 1e-9, 4 * secondsEach);
    }

    // GDM-8261A user manual, p. 223, notes 3 and 4; 8846A calibration manual, p. 21.
    [Theory]
    [InlineData("dmm-gdm8200")]
    [InlineData("dmm-8845a")]
    public void Below_a_twentieth_of_the_range_a_thousandth_of_it_is_added(string driver)
    {
        var accuracy = Level(driver).Accuracy!;
        Assert.Equal((0.05, 0.001), (accuracy.HoldsFromShareOfRange, accuracy.BelowAddShareOfRange));
    }

    // 2000 user manual, p. 5-48 (and 2016, p. 5-47): three bandwidths.
    [Fact]
    public void The_2000_has_the_bandwidths_of_its_manual() =>
        Assert.Equal([3, 30, 300], Level("dmm-2000").Bandwidths.Select(one => one.Hertz));

    // DM3000 guide: settles under 1.5 s; DM3058 programming guide, p. 3-46: 2.5 readings a second at S.
    [Fact]
    public void The_DM3058_is_given_its_settling_and_one_reading_more() =>
        Assert.Equal(1.5 + (1 / 2.5), Level("dmm-dm3058").SettleWithoutBandwidthSeconds, 9);

    // E4981A programming manual, p. 231; TX6000 manual, p. 89; E4980A user's guide, p. 261.
    [Theory]
    [InlineData("lcr-e4981a", 1, 0, 1, 2)]
    [InlineData("lcr-th282x", 3, 0, 1, -1)]
    [InlineData("scpi-lcr", 3, 0, 1, -1)]
    public void The_status_means_what_the_manual_says(string driver, int field, int good, int overload, int noContact)
    {
        var reply = Capacitance(driver).Reply;
        Assert.Equal(field, reply.StatusField);
        Assert.Equal([good], reply.Good);
        Assert.Contains(overload, reply.Overload);
        Assert.Equal([noContact], reply.NoContact);
    }

    // MZ-805 manual, p. 32: FUNC 3 is C + D, FREQ 2 is 1 kHz, MODE 2 is parallel.
    [Fact]
    public void The_LCR400_is_set_to_parallel_C_and_D_at_1_kHz() => Assert.Equal(
        ["FUNC 3", "FREQ 2", "MODE 2"], Capacitance("lcr-400").SetUp.Select(command => command.Command));

    // 8846A calibration manual, p. 30, 10 nF range: 1 % of reading + 0.5 % of range.
    [Fact]
    public void The_8846A_measures_capacitance_as_well_as_its_manual_says() => Assert.Equal(
        (0.01, 0.005 * 10_000), (Capacitance("dmm-8845a").Accuracy.ShareOfReading, Capacitance("dmm-8845a").Accuracy.OffsetPicofarads));

    private static DriverLevel Level(string driver) => DriverLibrary.BesideProgram.Read(driver).Level!;

    private static DriverCapacitance Capacitance(string driver) => DriverLibrary.BesideProgram.Read(driver).Capacitance!;
}
