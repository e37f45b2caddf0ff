using System.Globalization;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Physics;
using AutoSweep.Sim.Scpi;

namespace AutoSweep.Sim.Fixture;

/// <summary>The relay fixture as its serial line shows it.</summary>
/// <remarks>
/// The relay commands of one message are gathered and take effect together, at the message's end or before its first query, so
/// that a query always sees them. A message with an error moves no relay.
/// </remarks>
internal sealed class FixtureInstrument : IInstrument
{
    private static readonly NumberRange WatchdogSeconds = new(0, 3600, 0, "S");
    private readonly SimulatedBench bench;
    private readonly ScpiStatus status = new();
    private readonly ScpiInterpreter interpreter;
    private uint planned;
    private int reportedExpiries;

    public FixtureInstrument(FixtureDefinition fixture, SimulatedBench bench)
    {
        this.bench = bench;
        var table = new CommandTable().AddCommon(
            status, $"AutoSweep,Simulated relay fixture,{fixture.Serial},1.0", Reset, SettledAsync, () => interpreter!.AnswerWaiting);
        interpreter = new(AddRouting(AddOwn(table)), status);
    }

    public async ValueTask<string?> ExecuteAsync(string message, CancellationToken interrupted)
    {
        planned = bench.WithRelays((relays, now) =>
        {
            relays.Feed(now);
            for (; reportedExpiries < relays.Expiries; reportedExpiries++) status.Report(ScpiError.WatchdogExpired);
            return relays.Coils;
        });
        var answer = await interpreter.ExecuteAsync(message, interrupted);
        if (!interpreter.Failed) Drive();
        return answer;
    }

    public void Report(ScpiError error) => status.Report(error);

    private CommandTable AddRouting(CommandTable table) => table
        .Command("ROUTe:CLOSe", arguments => planned |= Channels(arguments.Expect(1, 1)))
        .Command("ROUTe:OPEN", arguments => planned &= ~Channels(arguments.Expect(1, 1)))
        .Command("ROUTe:OPEN:ALL", arguments => planned &= arguments.None().Count == 0 ? 0u : planned)
        .Query("ROUTe:CLOSe:STATe?", arguments =>
        {
            arguments.None();
            return ChannelList.Write(Drive());
        })
        .Query("ROUTe:CLOSe?", arguments => States(arguments.Expect(1, 1), closed: true))
        .Query("ROUTe:OPEN?", arguments => States(arguments.Expect(1, 1), closed: false));

    private CommandTable AddOwn(CommandTable table) => table
        .Query("DIAGnostic:RELay:CYCLes?", Cycles)
        .Query("MEASure:TEMPerature?", arguments => arguments.None(() => Temperature()))
        .Query("SYSTem:RELays?", arguments => arguments.None(() => Arguments.Nr1(Count)))
        .Command("SYSTem:WATChdog", arguments =>
        {
            var seconds = arguments.Expect(1, 1).Number(0, WatchdogSeconds);
            bench.WithRelays((relays, _) => relays.Watchdog = TimeSpan.FromSeconds(seconds));
        })
        .Query("SYSTem:WATChdog?", arguments => arguments.None(() => Nr2(bench.WithRelays((relays, _) => relays.Watchdog.TotalSeconds))));

    private int Count => bench.WithRelays((relays, _) => relays.Count);

    private uint Channels(Arguments arguments) => ChannelList.Set(ChannelList.Read(arguments.Raw(0), Count));

    private string States(Arguments arguments, bool closed)
    {
        var coils = Drive();
        return string.Join(',', ChannelList.Read(arguments.Raw(0), Count)
            .Select(channel => ((coils >> (channel - 1) & 1) != 0) == closed ? "1" : "0"));
    }

    private string Cycles(Arguments arguments)
    {
        var channels = ChannelList.Read(arguments.Expect(1, 1).Raw(0), Count);
        Drive();
        return bench.WithRelays((relays, _) => string.Join(',', channels.Select(channel => Arguments.Nr1(relays.Cycles[channel - 1]))));
    }

    // The box warms by six degrees within the first half hour: a plausible course, nothing depends on it.
    private string Temperature() => Nr2(22 + (6 * (1 - Math.Exp(-bench.Clock.Now.TotalMinutes / 10))));

    private static string Nr2(double value) => value.ToString("0.0##", CultureInfo.InvariantCulture);

    private uint Drive() => bench.WithRelays((relays, now) =>
    {
        relays.Drive(planned, now);
        return relays.Coils;
    });

    private void Reset()
    {
        planned = 0;
        bench.WithRelays((relays, _) => relays.Watchdog = TimeSpan.Zero);
    }

    private ValueTask SettledAsync(CancellationToken interrupted)
    {
        Drive();
        return bench.Clock.WaitUntilAsync(bench.WithRelays((relays, _) => relays.SettledAt), interrupted);
    }
}
