using AutoSweep.Core;
using AutoSweep.Core.Decades;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.ByHand;
using AutoSweep.Worker.Page.Setup;

namespace AutoSweep.Worker.Tests.Page.Setup;

public sealed class WiringFormTests
{
    private static readonly BenchWiring Wired = new()
    {
        Meter = "TCPIP::192.0.2.10::5025::SOCKET", AmplifierGain = 20, SettleSeconds = 0.4, Fixture = "ASRL/dev/ttyUSB0::INSTR",
        Calibration = "/data/box.json", CapacitanceMeter = "TCPIP::192.0.2.11::5025::SOCKET", CapacitanceMeterLeadsPicofarads = 1.5,
    };

    [Fact]
    public void A_wiring_that_is_shown_and_kept_unchanged_stays_the_same() => Assert.Equal(Wired, WiringForm.Of(Wired).Read());

    [Fact]
    public void A_bench_by_hand_and_eye_stays_the_same_dial_by_dial()
    {
        var wiring = new BenchWiring
        {
            Meter = "eye", Fixture = "hand", Eye = new() { Unit = EyeUnit.Volts, Name = "pointer meter", FlickerPercent = 1, AccuracyPercent = 3 },
            Box = new() { Name = "box 3", StrayPicofarads = 42, Decades = [new() { StepPicofarads = 100_000 }, new() { StepPicofarads = 100, Steps = 2, MeasuredPicofarads = [100.4, 201.25] }] },
        };

        var read = WiringForm.Of(wiring).Read();

        Assert.Equal(wiring.Eye, read.Eye);
        Assert.Equal(wiring with { Box = null }, read with { Box = null });
        Assert.Equal([.. wiring.Box.Decades.Select(Words)], read.Box!.Decades.Select(Words));
        Assert.Equal(42, read.Box.StrayPicofarads);
    }

    [Theory]
    [InlineData("1.5.0", "", "Amplifier gain")]
    [InlineData("0", "", "Amplifier gain")]
    [InlineData("NaN", "", "Amplifier gain")]
    [InlineData("20", "90", "Settle time")]
    public void A_number_that_cannot_be_is_told_with_its_field(string gain, string settle, string field)
    {
        var form = WiringForm.Of(Wired);
        (form.Gain, form.Settle) = (gain, settle);

        Assert.Contains(field, Assert.Throws<BenchFaultException>(form.Read).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_decimal_comma_is_read_as_everywhere()
    {
        var form = WiringForm.Of(Wired);
        form.Gain = "1,5";

        Assert.Equal(1.5, form.Read().AmplifierGain);
    }

    [Fact]
    public void A_bench_needs_a_meter_or_an_eye()
    {
        Assert.Contains("no meter", Assert.Throws<BenchFaultException>(new WiringForm().Read).Found, StringComparison.Ordinal);
        Assert.True(new WiringForm { ReadByEye = true }.Read().IsReadByEye);
    }

    [Fact]
    public void Two_instruments_never_share_an_address()
    {
        var form = WiringForm.Of(Wired);
        form.Take(new(InstrumentRole.CapacitanceMeter, Wired.Meter!, "scpi-lcr"));

        Assert.Contains("two instruments", Assert.Throws<BenchFaultException>(form.Read).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void An_instrument_that_is_taken_ends_work_by_eye_and_by_hand_and_brings_its_driver()
    {
        var form = new WiringForm { ReadByEye = true, DialledByHand = true };
        form.Take(new(InstrumentRole.Meter, "USB::1::2::3::INSTR", "scpi-dmm"));
        form.Take(new(InstrumentRole.Fixture, "ASRL/dev/ttyUSB1::INSTR", null));

        Assert.Equal((false, false, "USB::1::2::3::INSTR", "scpi-dmm"), (form.ReadByEye, form.DialledByHand, form.Meter, form.MeterDriver));
    }

    [Theory]
    [InlineData("", "10", "Dial 1, one step")]
    [InlineData("100n", "0", "Dial 1, highest position")]
    [InlineData("100n", "21", "Dial 1, highest position")]
    public void A_dial_that_cannot_be_is_told_by_its_number(string step, string steps, string field)
    {
        var box = new BoxFields();
        box.Dials.Add(new() { Step = step, Steps = steps });

        Assert.Contains(field, Assert.Throws<BenchFaultException>(box.Read).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void The_usual_box_is_a_box() => Assert.Equal(4, BoxFields.Usual().Read().Decades.Count);

    private static string Words(Decade dial) => FormattableString.Invariant($"{dial.StepPicofarads} {dial.Steps} {string.Join(' ', dial.MeasuredPicofarads ?? [])}");
}
