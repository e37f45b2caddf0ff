using AutoSweep.Instruments.Meters;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A small driver for tests of how driver files are interpreted; it is no meter's.</summary>
public static class Drivers
{
    public static MeterDriver Small { get; } = new()
    {
        Name = "small",
        Title = "a meter for tests",
        Identity = [new() { Maker = "Invented*", Model = "M?" }],
        Link = new(),
        SetUp = [Required("*RST")],
        Level = new()
        {
            SetUp = [Required("CONF:VOLT:AC {range}"), Optional("DET:BAND {bandwidth}")],
            RangesVolts = [0.1, 1, 10],
            OverRange = 1.2,
            Bandwidths =
            [
                new() { Hertz = 3, FromToneHertz = 3, SettleSeconds = 7, Source = "test" },
                new() { Hertz = 20, FromToneHertz = 100, SettleSeconds = 1, Source = "test" },
            ],
            SettleWithoutBandwidthSeconds = 1.5,
            Burst = new()
            {
                SetUp = [Optional("DET:BAND 200"), Optional("SAMP:COUN 8")],
                Samples = 8,
                IntervalSeconds = 0.021,
                ApertureSeconds = 0.02,
                TimeConstantSeconds = 0.01,
                SettleSeconds = 0,
                Source = "test",
                Read = "READ?",
            },
            Read = "READ?",
        },
        Frequency = new()
        {
            SetUp = [Required("CONF:FREQ"), Optional("FREQ:APER {aperture}")],
            ApertureSeconds = 0.1,
            SettleSeconds = 0.5,
            Source = "test",
            Read = "READ?",
        },
        Beep = Optional("SYST:BEEP"),
    };

    /// <summary>A meter that measures capacitance only.</summary>
    public static MeterDriver CapacitanceOnly { get; } = Small with
    {
        Level = null,
        Frequency = null,
        Capacitance = new()
        {
            SetUp = [Required("FREQ {frequency}"), Optional("CORR:OPEN:STAT ON")],
            TestHertz = 1000,
            SettleSeconds = 0,
            ReadSeconds = 0.5,
            Read = "READ?",
            Reply = new() { CapacitanceField = 2, DissipationField = 3, StatusField = 1, Overload = [1], NoContact = [2] },
            Accuracy = new() { ShareOfReading = 0.001, OffsetPicofarads = 0.5, Source = "test" },
        },
    };

    private static DriverCommand Required(string command) => new() { Command = command, Required = true };

    private static DriverCommand Optional(string command) => new() { Command = command, Required = false };
}
