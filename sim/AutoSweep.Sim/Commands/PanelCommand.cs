using System.CommandLine;
using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Clock;
using AutoSweep.Sim.Panel;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.Commands;

/// <summary><c>autosweep-sim panel</c>: the bench by hand and eye, a line for each thing done and seen.</summary>
internal static class PanelCommand
{
    public static Command Create()
    {
        var bench = BenchOption.Create();
        var rate = new Option<double>("--clock-rate") { Description = "Simulated seconds in a real one.", DefaultValueFactory = _ => 1 };
        var tolerance = new Option<double>("--box-tolerance") { Description = "The decade box's tolerance in per cent.", DefaultValueFactory = _ => 1 };
        var seed = new Option<int?>("--seed") { Description = "Replaces the bench's seed of noise, wander and the box." };
        var command = new Command("panel", "The bench by hand: type what the hands do, read what the meter shows. 'help' lists what can be done.")
        {
            bench, rate, tolerance, seed,
        };
        command.SetAction((parsed, cancellationToken) => RunAsync(
            parsed.GetRequiredValue(bench), parsed.GetValue(rate), parsed.GetValue(tolerance), parsed.GetValue(seed), cancellationToken));
        return command;
    }

    private static async Task RunAsync(string name, double rate, double tolerance, int? seed, CancellationToken cancellationToken)
    {
        var path = BenchLocator.Bench(name);
        var read = BenchFile.Read(path);
        var bench = read with { Seed = seed ?? read.Seed };
        var profile = GeneratorProfileFile.Read(BenchLocator.Profile(bench.Profile, Path.GetDirectoryName(path)!));
        var panel = new FrontPanel(bench, new(bench, profile, new SimulatedClock(rate)), new(tolerance, bench.Seed + 7));
        while (await Console.In.ReadLineAsync(cancellationToken) is { } line && await panel.DoAsync(line, cancellationToken) is { } seen)
            await Console.Out.WriteLineAsync(seen);
    }
}
