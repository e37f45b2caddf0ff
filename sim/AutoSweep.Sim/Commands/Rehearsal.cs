using System.Net;
using System.Net.Sockets;
using System.Text;
using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.CapacitanceMeter;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Fixture;
using AutoSweep.Sim.Meter;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Scpi;
using AutoSweep.Sim.Wire;

namespace AutoSweep.Sim.Commands;

/// <summary>Lets a second, unseen bench answer once to everything that a job says.</summary>
/// <remarks>
/// At clock rate 60 a worker's time-out of 2 s is 33 real milliseconds, and compiling the program's parts as they are first used was
/// measured to take 23 of them for the first answer. So they are compiled before the bench says that it is ready.
/// </remarks>
internal static class Rehearsal
{
    /// <summary>So fast that hardly a wait takes real time. At 1e6 a machine under load could not draw the mains' wander as fast as its time passed,
    /// and filled its memory (seen once, at a load of 30 on two cores).</summary>
    private const double Rate = 1e4;

    private static readonly string[] MeterMessages =
    [
        "*RST", "*CLS", "*IDN?", "CONF:VOLT:AC 1;:DET:BAND 20;:TRIG:DEL 0;:SAMP:COUN 3", "READ?", "INIT;*OPC?", "FETC?",
        "CONF:FREQ;:FREQ:VOLT:RANG 0.1;APER 0.1;:TRIG:DEL 0", "READ?", "SYST:BEEP", "DISP:TEXT \"HELLO\"", "FOO", "SYST:ERR?",
        // Three real milliseconds: the one wait here that a timer holds.
        "TRIG:DEL 30", "READ?",
    ];

    private static readonly string[] FixtureMessages =
    [
        "*IDN?", "*TST?", "SYST:REL?", "SYST:WATC 10", "ROUT:OPEN:ALL", "ROUT:CLOS (@1,3:5)", "ROUT:OPEN (@1);CLOS (@2,7)", "*OPC?",
        "ROUT:CLOS:STAT?", "SYST:WATC?", "DIAG:REL:CYCL? (@1:2)", "MEAS:TEMP?", "SYST:ERR?",
    ];

    private static readonly string[] CapacitanceMessages =
    [
        "*RST", "*CLS", "*IDN?", "FUNC:IMP CPD", "FREQ 1000", "VOLT 1", "APER LONG,1", "FUNC:IMP:RANG:AUTO ON", "CORR:OPEN:STAT ON",
        "CORR:SHOR:STAT ON", "TRIG:SOUR BUS", "TRIG;:FETC?", "SYST:BEEP", "DISP:LINE \"1 + 2\"", "FOO", "SYST:ERR?",
    ];

    public static async Task RunAsync(BenchDefinition bench, GeneratorProfile profile)
    {
        var simulated = new SimulatedBench(bench, profile, new SimulatedClock(Rate));
        foreach (var output in bench.Outputs.Where((_, index) => index % 8 == 0)) simulated.Clip(output.Number, withFixture: true);
        using var meter = new MeterInstrument(bench.Meter, simulated);
        await TalkAsync(meter, MeterMessages, simulated.Clock);
        var clips = new CapacitanceClips(bench.Parts, simulated);
        await TalkAsync(
            new CapacitanceMeterInstrument(bench.CapacitanceMeter, simulated, clips, bench.Seed), CapacitanceMessages, simulated.Clock);
        await TalkAsync(new FixtureInstrument(bench.Fixture, simulated), FixtureMessages, simulated.Clock);
    }

    private static async Task TalkAsync(IInstrument instrument, string[] messages, SimulatedClock clock)
    {
        using var end = new CancellationTokenSource();
        using var port = new TcpPort(instrument, new(), clock, 0);
        var serving = port.RunAsync(end.Token);
        using (var client = new TcpClient())
        {
            await client.ConnectAsync(new IPEndPoint(IPAddress.Loopback, port.Port));
            using var answers = new StreamReader(client.GetStream());
            foreach (var message in messages)
            {
                await client.GetStream().WriteAsync(Encoding.ASCII.GetBytes(message + "\n"));
                if (message.Contains('?', StringComparison.Ordinal)) await answers.ReadLineAsync();
            }
        }

        await end.CancelAsync();
        await serving.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
    }
}
