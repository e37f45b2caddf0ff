using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Scpi;

/// <summary>
/// What the meter answers to a message, and the errors it queues. Syntax and numbers: IEEE 488.2 (7, 8) and SCPI-1999 (volume 1, 6;
/// volume 2, 21.8); the commands: the 34401A type's published set.
/// </summary>
public class MeterWireTests
{
    public static TheoryData<string, string?, string> Messages => new()
    {
        // message, answer, errors left
        { "*IDN?", "AutoSweep,Simulated bench meter,SIM-M-test,1.0", "" },
        { "*idn?", "AutoSweep,Simulated bench meter,SIM-M-test,1.0", "" },
        { "  *OPC?  ", "1", "" },
        { "", null, "" },
        { "SYST:ERR?", "0,\"No error\"", "" },
        { "SYSTEM:ERROR:NEXT?", "0,\"No error\"", "" },
        { ":system:err?", "0,\"No error\"", "" },
        { "SYST:VERS?", "1999.0", "" },
        { "*TST?;*OPC?", "0;1", "" },
        { "SYST:VERS?;ERR?", "1999.0;0,\"No error\"", "" },
        { "CONF:VOLT:AC 0.1;:DET:BAND 3;:DET:BAND?", "+3.00000000E+00", "" },
        { "CONF:VOLT:AC 0.1;CONF?", null, "-113" },
        { "CONF:VOLT:AC 0.1;:CONF?", "\"VOLT:AC +1.00000000E-01,+1.00000000E-07\"", "" },
        { "VOLT:AC:RANG 1;BAND 200;BAND?", "+2.00000000E+02", "" },
        { "SENSE:VOLTAGE:AC:RANGE:UPPER 100 MV;:VOLT:AC:RANG?", "+1.00000000E-01", "" },
        { "VOLT:AC:RANG 0.5;*ESE 4;BAND?", "+2.00000000E+01", "" },
        { "VOLT:AC:RANG? MAX", "+7.50000000E+02", "" },
        { "VOLT:AC:RANG MIN;RANG?", "+1.00000000E-01", "" },
        { "DET:BAND 15;BAND?", "+3.00000000E+00", "" },
        { "DET:BAND 190;BAND?", "+2.00000000E+01", "" },
        { "FREQ:APER 1;VOLT:RANG 0.1;:FREQ:APER?", "+1.00000000E+00", "" },
        { "FREQ:APER 10MS;APER?", "+1.00000000E-02", "" },
        { "FUNC \"FREQ\";FUNC?", "\"FREQ\"", "" },
        { "FUNC 'VOLT:AC';:FUNC?", "\"VOLT:AC\"", "" },
        { "TRIG:SOUR BUS;SOUR?", "BUS", "" },
        { "TRIG:DEL 0.25;DEL?;DEL:AUTO?", "+2.50000000E-01;0", "" },
        { "SAMP:COUN 3;COUN?", "3", "" },
        { "SYST:BEEP;REM;LOC", null, "" },
        { "*ESE 36;*ESE?;*SRE?", "36;0", "" },

        // Wrong messages.
        { "FOO", null, "-113" },
        { "SYSTE:ERR?", null, "-113" },
        { "*CLS?", null, "-113" },
        { "READ", null, "-113" },
        { "VOLT:AC:RANG2 1", null, "-114" },
        { "VOLT:AC:RANG", null, "-109" },
        { "VOLT:AC:RANG 1,2", null, "-108" },
        { "*RST 1", null, "-108" },
        { "VOLT:AC:RANG 1000", null, "-222" },
        { "DET:BAND 400 KHZ", null, "-222" },
        { "VOLT:AC:RANG 1.2.3", null, "-121" },
        { "VOLT:AC:RANG ON", null, "-148" },
        { "VOLT:AC:RANG \"1\"", null, "-158" },
        { "VOLT:AC:RANG 1 HZ", null, "-131" },
        { "SAMP:COUN 3 V", null, "-138" },
        { "TRIG:SOUR 3", null, "-128" },
        { "TRIG:SOUR BUZZ", null, "-224" },
        { "FUNC \"CURR\"", null, "-224" },
        { "FUNC \"FREQ", null, "-151" },
        { "DET:BAND (3", null, "-171" },
        { "VOLT::AC:RANG 1", null, "-102" },
        { "*TST?;;*OPC?", "0", "-102" },
        { "VOLT:AC:RANG\"1\"", null, "-111" },
        { "VOLT#AC", null, "-101" },
        { "ABCDEFGHIJKLM 1", null, "-112" },
        { "*IDN?;*OPC?", "AutoSweep,Simulated bench meter,SIM-M-test,1.0", "-440" },
        { "FETC?", null, "-230" },
        { "TRIG:SOUR BUS;:READ?", null, "-214" },
        { "*TRG", null, "-211" },
        { "TRIG:SOUR BUS;:INIT;:INIT", null, "-213" },
        { "FOO;*TST?", null, "-113" },
        { "VOLT:AC:RANG 1000;*TST?", "0", "-222" },
    };

    [Theory]
    [MemberData(nameof(Messages))]
    public async Task A_message_gives_its_answer_and_its_errors(string message, string? answer, string errors)
    {
        using var bench = new TestBench();
        Assert.Equal(answer, await bench.MeterAsync(message));
        Assert.Equal(errors, await ErrorsAsync(bench));
    }

    [Fact]
    public async Task The_error_queue_keeps_the_oldest_and_says_that_it_ran_over()
    {
        using var bench = new TestBench();
        for (var i = 0; i < 30; i++) await bench.MeterAsync("FOO");
        var errors = (await ErrorsAsync(bench)).Split(' ');
        Assert.Equal(20, errors.Length);
        Assert.All(errors[..19], error => Assert.Equal("-113", error));
        Assert.Equal("-350", errors[19]);
    }

    [Theory]
    [InlineData("FOO", 32)]
    [InlineData("VOLT:AC:RANG 1000", 16)]
    [InlineData("*IDN?;*OPC?", 4)]
    [InlineData("*OPC", 1)]
    public async Task Each_class_of_error_sets_its_bit_of_the_event_register(string message, int bit)
    {
        using var bench = new TestBench();
        Assert.Equal("128", await bench.MeterAsync("*ESR?"));
        await bench.MeterAsync(message);
        Assert.Equal(bit.ToString(System.Globalization.CultureInfo.InvariantCulture), await bench.MeterAsync("*ESR?"));
        Assert.Equal("0", await bench.MeterAsync("*ESR?"));
    }

    [Fact]
    public async Task The_status_byte_tells_of_errors_answers_and_enabled_events()
    {
        using var bench = new TestBench();
        await bench.MeterAsync("*CLS;*ESE 32;*SRE 32");
        Assert.Equal("0", await bench.MeterAsync("*STB?"));
        await bench.MeterAsync("FOO");
        Assert.Equal("100", await bench.MeterAsync("*STB?"));
        Assert.Equal("0;116", await bench.MeterAsync("*TST?;*STB?"));
    }

    [Fact]
    public async Task A_reset_keeps_errors_and_enables_and_a_clear_empties_the_queue()
    {
        using var bench = new TestBench();
        await bench.MeterAsync("FOO");
        await bench.MeterAsync("*ESE 32;*RST");
        Assert.Equal("32;-113,\"Undefined header\"", await bench.MeterAsync("*ESE?;:SYST:ERR?"));
        await bench.MeterAsync("FOO");
        await bench.MeterAsync("*CLS");
        Assert.Equal("", await ErrorsAsync(bench));
    }

    private static async Task<string> ErrorsAsync(TestBench bench)
    {
        var errors = new List<string>();
        for (var error = await bench.MeterAsync("SYST:ERR?"); error != "0,\"No error\""; error = await bench.MeterAsync("SYST:ERR?"))
            errors.Add(error!.Split(',')[0]);
        return string.Join(' ', errors);
    }
}
