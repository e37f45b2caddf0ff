using AutoSweep.Core;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments.Fixture;

namespace AutoSweep.Instruments.Tests.Fixture;

public sealed class FixtureCalibrationTests : IDisposable
{
    private readonly string _file = Path.GetTempFileName();

    public void Dispose() => File.Delete(_file);

    [Fact]
    public void The_three_fields_are_enough()
    {
        var calibration = Read("""{ "fixtureSerial": "F-0007", "strayPicofarads": 233.5, "relaysPicofarads": [100.7, 202.4] }""");
        Assert.Equal(("F-0007", new Capacitance(234)), (calibration.FixtureSerial, calibration.Stray));
        Assert.Equal([new(101), new(202)], calibration.Relays);
    }

    [Fact]
    public void What_else_a_calibration_tells_is_kept()
    {
        var calibration = Read("""
            {
              "fixtureSerial": "F-0007", "strayPicofarads": 0, "relaysPicofarads": [100, 200],
              "date": "2026-11-24", "meter": "an invented LCR meter, 1 kHz", "temperatureCelsius": 21.5,
              "strayStandardUncertaintyPicofarads": 2, "relayStandardUncertaintiesPicofarads": [0.1, 0.2], "note": "invented"
            }
            """);
        Assert.Equal(new DateOnly(2026, 11, 24), calibration.Date);
        Assert.Equal(0.2, calibration.RelayStandardUncertaintiesPicofarads![1]);
    }

    [Fact]
    public void What_is_written_is_what_is_read_and_nothing_lies_beside_it()
    {
        var written = new FixtureCalibration
        {
            FixtureSerial = "F-0007", StrayPicofarads = 233.512, RelaysPicofarads = [100.7, 202.4], Date = new(2026, 11, 24),
            Meter = "an invented LCR meter", StrayStandardUncertaintyPicofarads = 0.02, RelayStandardUncertaintiesPicofarads = [0.03, 0.06],
        };
        FixtureCalibrationFile.Write(_file, written);
        var read = FixtureCalibration.Read(_file);
        Assert.Equal(
            (written.StrayPicofarads, written.Date, written.Meter, null), (read.StrayPicofarads, read.Date, read.Meter, read.TemperatureCelsius));
        Assert.Equal(written.RelayStandardUncertaintiesPicofarads, read.RelayStandardUncertaintiesPicofarads);
        Assert.False(File.Exists(_file + ".new"));
    }

    [Fact]
    public void A_folder_that_is_not_there_is_a_fault_that_names_the_file()
    {
        var fault = Assert.Throws<BenchFaultException>(() => FixtureCalibrationFile.Write(
            Path.Combine(_file, "none", "c.json"), new() { FixtureSerial = "F", StrayPicofarads = 1, RelaysPicofarads = [1] }));
        Assert.Contains("c.json", fault.Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "fixtureSerial": "A", "strayPicofarads": 1, "relaysPicofarads": [1], "stray": 1 }""", "stray")]
    [InlineData("""{ "fixtureSerial": "A", "relaysPicofarads": [1] }""", "strayPicofarads")]
    [InlineData("""{ "fixtureSerial": "", "strayPicofarads": 1, "relaysPicofarads": [1] }""", "fixtureSerial")]
    [InlineData("""{ "fixtureSerial": "A", "strayPicofarads": -1, "relaysPicofarads": [1] }""", "strayPicofarads")]
    [InlineData("""{ "fixtureSerial": "A", "strayPicofarads": 1, "relaysPicofarads": [] }""", "relaysPicofarads")]
    [InlineData("""{ "fixtureSerial": "A", "strayPicofarads": 1, "relaysPicofarads": [1, 0] }""", "relaysPicofarads[1]")]
    [InlineData("""{ "fixtureSerial": "A", "strayPicofarads": 1, "relaysPicofarads": [1, "2"] }""", "relaysPicofarads[1]")]
    [InlineData("""{ "fixtureSerial": "A", "strayPicofarads": 1, "relaysPicofarads": [1], "relayStandardUncertaintiesPicofarads": [1, 2] }""", "relayStandardUncertaintiesPicofarads")]
    [InlineData("not json", "line 1")]
    public void What_is_wrong_is_named(string text, string named)
    {
        var fault = Assert.Throws<BenchFaultException>(() => Read(text));
        Assert.Equal(BenchFault.BadFile, fault.Kind);
        Assert.Contains(named, fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void The_schema_beside_the_record_is_the_one_that_it_makes() =>
        Assert.Equal(FixtureCalibration.SchemaText,
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "fixture-calibration.schema.json")));

    private FixtureCalibration Read(string text)
    {
        File.WriteAllText(_file, text);
        return FixtureCalibration.Read(_file);
    }
}
