using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using AutoSweep.Bench.Tests.Support;

namespace AutoSweep.Bench.Tests;

/// <summary>An independent client, PyVISA with pyvisa-py as Debian packages them, finds the simulated instruments to be SCPI instruments: on a
/// socket, and on a serial line.</summary>
/// <remarks>Error numbers and texts: SCPI-1999, volume 2, 21.8. Formats: the 34401A user's guide prints readings as <c>+4.27150000E-03</c>.</remarks>
public sealed class PyvisaTests
{
    [PyvisaFact]
    public async Task An_independent_client_reads_meter_fixture_and_capacitance_meter()
    {
        await using var bench = await ServedBench.StartAsync("small", "none", rate: 1);
        var answers = await TalkAsync(bench.Meter, bench.Fixture, bench.CapacitanceMeter);

        CheckMeter(answers.GetProperty("meter"));
        CheckFixture(answers.GetProperty("fixture"));
        CheckCapacitanceMeter(answers.GetProperty("capacitanceMeter"), bench.Calibration);
    }

    private static void CheckMeter(JsonElement meter)
    {
        Assert.Equal("AutoSweep,Simulated bench meter,SIM-M-small,1.0", meter.GetProperty("identity").GetString());
        Assert.Equal("\"VOLT:AC +1.00000000E+00,+1.00000000E-06\"", meter.GetProperty("configuration").GetString());
        Assert.Equal(["-113,\"Undefined header\"", "0,\"No error\""], Texts(meter.GetProperty("misspelt")));
        // VPP-4.3, table of completion and error codes: the time-out's name is VI_ERROR_TMO.
        Assert.Equal("VI_ERROR_TMO", meter.GetProperty("silence").GetString());
        Assert.Equal("-410,\"Query INTERRUPTED\"", meter.GetProperty("interrupted").GetString());
        Assert.Equal("0,\"No error\"", meter.GetProperty("errorsAfter").GetString());
        var reading = Reading(meter.GetProperty("reading"));
        Assert.All(Numbers(meter.GetProperty("burst")), one => Assert.InRange(one, reading / 2, reading * 2));
        Assert.Equal(5, meter.GetProperty("burst").GetArrayLength());
        Assert.InRange(Reading(meter.GetProperty("readingAfter")), reading / 2, reading * 2);
    }

    private static void CheckFixture(JsonElement fixture)
    {
        Assert.Equal("AutoSweep,Simulated relay fixture,SIM-F-small,1.0", fixture.GetProperty("identity").GetString());
        Assert.Equal(["1", "(@1,3)"], Texts(fixture.GetProperty("closed")));
        Assert.Equal(["-222,\"Data out of range\"", "(@1,3)"], Texts(fixture.GetProperty("refused")));
        Assert.Equal(["1", "(@)"], Texts(fixture.GetProperty("opened")));
    }

    // What one relay adds is in the calibration sheet that lies beside the bench.
    private static void CheckCapacitanceMeter(JsonElement meter, string sheet)
    {
        Assert.Equal("AutoSweep,Simulated LCR meter,SIM-L-small,1.0", meter.GetProperty("identity").GetString());
        using var calibration = JsonDocument.Parse(File.ReadAllText(sheet));
        var relay = calibration.RootElement.GetProperty("relaysPicofarads")[12].GetDouble() * 1e-12;
        var added = Numbers(meter.GetProperty("closed"))[0] - Numbers(meter.GetProperty("open"))[0];
        // A per cent covers the LCR meter's gain error and the sheet's uncertainty.
        Assert.InRange(added, relay * 0.99, relay * 1.01);
        Assert.Equal("0,\"No error\"", meter.GetProperty("errors").GetString());
    }

    private static async Task<JsonElement> TalkAsync(params string[] resources)
    {
        var script = Path.Combine(AppContext.BaseDirectory, "Pyvisa", "talk.py");
        var run = await Run.EndAsync(Process.Start(new ProcessStartInfo(PyvisaFactAttribute.Python!, [script, .. resources])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!);
        Assert.True(run.ExitCode == 0, run.Errors);
        return JsonDocument.Parse(run.Output).RootElement;
    }

    private static double Reading(JsonElement text)
    {
        Assert.Matches(@"^[+-]\d\.\d{8}E[+-]\d{2}$", text.GetString());
        return double.Parse(text.GetString()!, CultureInfo.InvariantCulture);
    }

    private static string[] Texts(JsonElement array) => [.. array.EnumerateArray().Select(one => one.GetString()!)];

    private static double[] Numbers(JsonElement array) => [.. array.EnumerateArray().Select(one => one.GetDouble())];
}
