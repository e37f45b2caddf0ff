using AutoSweep.Sim.Tests.Support;

namespace AutoSweep.Sim.Tests.Fixture;

/// <summary>The fixture's serial line, command by command (the fixture protocol: SCPI-1999 and its own two commands).</summary>
public class FixtureWireTests
{
    public static TheoryData<string, string?, string> Messages => new()
    {
        { "*IDN?", "AutoSweep,Simulated relay fixture,SIM-F-test,1.0", "0" },
        { "SYST:REL?", "16", "0" },
        { "ROUT:CLOS:STAT?", "(@)", "0" },
        { "ROUT:CLOS (@1,3,5:8);CLOS:STAT?", "(@1,3,5,6,7,8)", "0" },
        { "ROUTE:CLOSE (@8:5);:ROUTE:CLOSE:STATE?", "(@5,6,7,8)", "0" },
        { "ROUT:CLOS (@3,4);:ROUT:OPEN (@3);CLOS (@7);:ROUT:CLOS:STAT?", "(@4,7)", "0" },
        { "ROUT:CLOS (@1:16);OPEN:ALL;:ROUT:CLOS:STAT?", "(@)", "0" },
        { "ROUT:CLOS (@2);CLOS? (@1:3);OPEN? (@1:3)", "0,1,0;1,0,1", "0" },
        { "ROUT:CLOS (@2);*OPC?", "1", "0" },
        { "ROUT:CLOS (@);CLOS:STAT?", "(@)", "0" },
        { "DIAG:REL:CYCL? (@1:3)", "0,0,0", "0" },
        { "ROUT:CLOS (@1);:DIAGNOSTIC:RELAY:CYCLES? (@1,2)", "1,0", "0" },
        { "SYST:WATC 5;WATC?", "5.0", "0" },
        { "SYST:WATC?", "0.0", "0" },
        { "*TST?", "0", "0" },
        { "MEAS:TEMP?", "22.0", "0" },
        { "ROUT:CLOS (@17)", null, "-222" },
        { "ROUT:CLOS (@0)", null, "-222" },
        { "ROUT:CLOS 3", null, "-104" },
        { "ROUT:CLOS (1)", null, "-171" },
        { "ROUT:CLOS (@1:2:3)", null, "-171" },
        { "ROUT:CLOS (@a)", null, "-171" },
        { "ROUT:CLOS (@1", null, "-171" },
        { "ROUT:CLOS (@1:99999999)", null, "-171" },
        { "ROUT:CLOS", null, "-109" },
        { "ROUT:OPEN:ALL (@1)", null, "-108" },
        { "SYST:WATC -1", null, "-222" },
        { "ROUT:SHUT (@1)", null, "-113" },
    };

    [Theory]
    [MemberData(nameof(Messages))]
    public async Task A_message_gives_its_answer_and_its_error(string message, string? answer, string error)
    {
        using var bench = new TestBench();
        Assert.Equal(answer, await bench.FixtureAsync(message));
        Assert.Equal(error, (await bench.FixtureAsync("SYST:ERR?"))!.Split(',')[0]);
    }

    [Theory]
    [InlineData("ROUT:CLOS (@2);OPEN (@99)")]
    [InlineData("ROUT:CLOS (@2);FOO")]
    public async Task A_message_with_an_error_moves_no_relay(string message)
    {
        using var bench = new TestBench();
        await bench.FixtureAsync("ROUT:CLOS (@1)");
        await bench.FixtureAsync(message);
        Assert.Equal("(@1)", await bench.FixtureAsync("ROUT:CLOS:STAT?"));
    }
}
