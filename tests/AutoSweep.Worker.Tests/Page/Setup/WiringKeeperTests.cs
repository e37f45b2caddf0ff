using AutoSweep.Core;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Page.Setup;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Page.Setup;

public sealed class WiringKeeperTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    private string File => _folder.File("bench.json");

    private WiringKeeper Keeper => new(File);

    [Fact]
    public void The_wiring_before_can_be_had_back_and_the_new_one_again()
    {
        Keeper.Keep(new() { Meter = "eye", AmplifierGain = 1 });
        Assert.False(Keeper.CanGoBack);
        Keeper.Keep(new() { Meter = "eye", AmplifierGain = 20 });

        Keeper.GoBack();
        Assert.Equal(1, BenchWiringFile.Read(File).AmplifierGain);
        Keeper.GoBack();
        Assert.Equal(20, BenchWiringFile.Read(File).AmplifierGain);
    }

    [Theory]
    [InlineData("no-such-driver", null, 1)]
    [InlineData("scpi-dmm", "no-such-file.json", 1)]
    [InlineData("scpi-dmm", null, 0)]
    public void A_wiring_that_cannot_be_read_back_leaves_the_one_before(string driver, string? calibration, double gain)
    {
        Keeper.Keep(new() { Meter = "eye" });

        Assert.Throws<BenchFaultException>(() => Keeper.Keep(new() { Meter = "eye", MeterDriver = driver, Calibration = calibration, AmplifierGain = gain }));

        Assert.Equal("scpi-dmm", BenchWiringFile.Read(File).MeterDriver);
        Assert.Equal([File], Directory.GetFiles(_folder.Path));
    }

    [Fact]
    public void A_bench_by_hand_and_eye_is_written_so_that_it_can_be_read_back()
    {
        Keeper.Keep(new() { Meter = "eye", Eye = new() { AccuracyPercent = 2 }, Fixture = "hand", Box = BoxFields.Usual().Read() });

        var kept = BenchWiringFile.Read(File);
        Assert.Equal((4, 100_000L, 2.0), (kept.Box!.Decades.Count, kept.Box.Decades[0].StepPicofarads, kept.Eye.AccuracyPercent));
    }

    [Fact]
    public void A_file_in_the_data_folder_is_named_relative_to_it_so_that_the_folder_may_move()
    {
        var name = new CalibrationShelf(_folder.Path).TakeIn(new("sent.json", Calibration));
        Keeper.Keep(new() { Meter = "eye", Calibration = _folder.File(name) });

        Assert.Contains($"\"calibration\": \"{name}\"", System.IO.File.ReadAllText(File), StringComparison.Ordinal);
    }

    [Fact]
    public void An_uploaded_calibration_is_kept_under_its_boxs_serial_number_and_never_written_over()
    {
        var shelf = new CalibrationShelf(_folder.Path);

        Assert.Equal("calibration-F--7.json", shelf.TakeIn(new("sent.json", Calibration)));
        Assert.Equal("calibration-F--7.json", shelf.TakeIn(new("sent.json", Calibration)));
        Assert.Equal("calibration-F--7-2.json", shelf.TakeIn(new("sent.json", Calibration.Replace("40", "41", StringComparison.Ordinal))));
        Assert.Equal([("calibration-F--7-2.json", "F/.7"), ("calibration-F--7.json", "F/.7")], shelf.List());
    }

    [Theory]
    [InlineData("no JSON")]
    [InlineData("""{ "fixtureSerial": "F", "strayPicofarads": 40, "relaysPicofarads": [] }""")]
    [InlineData("""{ "fixtureSerial": "F", "strayPicofarads": 40, "relaysPicofarads": [100], "surprise": 1 }""")]
    public void An_upload_that_is_no_calibration_is_refused_and_nothing_is_kept(string text)
    {
        Assert.Throws<BenchFaultException>(() => new CalibrationShelf(_folder.Path).TakeIn(new("sent.json", text)));
        Assert.Empty(Directory.GetFiles(_folder.Path));
    }

    public void Dispose() => _folder.Dispose();

    private const string Calibration = """{ "fixtureSerial": "F/.7", "strayPicofarads": 40, "relaysPicofarads": [100, 200] }""";
}
