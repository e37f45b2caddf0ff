using System.CommandLine;
using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Commands;

/// <summary><c>autosweep-sim serve</c>: the bench on its wires.</summary>
internal static class ServeCommand
{
    public static Command Create()
    {
        var bench = BenchOption.Create();
        var rate = new Option<double>("--clock-rate") { Description = "Simulated seconds in a real one.", DefaultValueFactory = _ => 1 };
        var seed = new Option<int?>("--seed") { Description = "Replaces the bench's seed of noise and wander." };
        var hands = new Option<string>("--hands")
        {
            Description = "What the hands do, in order: survey, sweep, parts, fit, check, level, asLeft, joined by commas, or none.",
            DefaultValueFactory = _ => "survey,sweep",
        };
        var port = new Option<int>("--meter-port") { Description = "The meter's TCP port; 0 takes a free one." };
        var lcr = new Option<int>("--capacitance-meter-port") { Description = "The LCR meter's TCP port; 0 takes a free one." };
        var faults = new Option<string?>("--relay-faults")
        {
            Description = "Plants faults in relays: 5:stuckOpen,9:stuckClosed,12:leaking. The read-back shows the coils, not the contacts.",
        };
        var fixture = new Option<string>("--fixture") { Description = "The fixture's wire: pty or tcp.", DefaultValueFactory = _ => "pty" };
        var events = new Option<bool>("--events") { Description = "Print a JSON line for everything that the hands do." };
        var unplugging = new Option<bool>("--unplugging")
        {
            Description = "Take lines such as 'unplug meter 3' from standard input; the fixture's name returns after a gap.",
        };
        hands.Validators.Add(result => Check(result, hands, text => HandsPhases.TryRead(text, out _), HandsPhases.Expected));
        faults.Validators.Add(result => Check(result, faults, text => RelayFaults.TryRead(text, out _), RelayFaults.Expected));
        fixture.Validators.Add(result => Check(result, fixture, text => text is "pty" or "tcp", "pty or tcp"));
        fixture.AcceptOnlyFromAmong("pty", "tcp");
        rate.Validators.Add(result =>
        {
            if (result.GetValue(rate) is not (> 0 and <= 1e6)) result.AddError("--clock-rate: expected a number above 0, at most 1000000.");
        });
        var command = new Command("serve", "Serves a simulated bench until standard input closes.")
        {
            bench, rate, seed, hands, port, lcr, fixture, faults, unplugging, events,
        };
        command.SetAction((parsed, cancellationToken) => RunAsync(
            new ServeOptions
            {
                Bench = parsed.GetRequiredValue(bench),
                ClockRate = parsed.GetValue(rate),
                Seed = parsed.GetValue(seed),
                Hands = HandsPhases.Read(parsed.GetValue(hands)!),
                MeterPort = parsed.GetValue(port),
                CapacitanceMeterPort = parsed.GetValue(lcr),
                RelayFaults = parsed.GetValue(faults) is { } planted && RelayFaults.TryRead(planted, out var read)
                    ? read : new Dictionary<int, RelayFault>(),
                Pty = parsed.GetValue(fixture) == "pty",
                Unplugging = parsed.GetValue(unplugging),
                Events = parsed.GetValue(events),
            },
            cancellationToken));
        return command;
    }

    private static void Check(
        System.CommandLine.Parsing.OptionResult result, Option option, Func<string, bool> holds, string expected)
    {
        if (result.GetValueOrDefault<string?>() is not { } text || !holds(text)) result.AddError($"{option.Name}: expected {expected}.");
    }

    private static async Task<int> RunAsync(ServeOptions options, CancellationToken cancellationToken)
    {
        using var served = new ServedBench(options, Console.Out);
        using var parent = new ParentWatch(Console.OpenStandardInput(), options.Unplugging ? served.Hear : null);
        using var over = CancellationTokenSource.CreateLinkedTokenSource(parent.Over, cancellationToken);
        await served.RunAsync(over.Token);
        return 0;
    }
}
