using AutoSweep.Benchmarks;
using AutoSweep.Benchmarks.ByHand;
using AutoSweep.Benchmarks.Drivers;
using AutoSweep.Benchmarks.Faults;
using AutoSweep.Benchmarks.Magnets;
using AutoSweep.Benchmarks.Matching;
using AutoSweep.Benchmarks.Peaks;
using Spectre.Console;

// 0: every figure met its target. 1: one fell short. 2: no such benchmark.
IBenchmark[] benchmarks =
[
    new PeakBenchmark(TimeProvider.System), new MatchingBenchmark(TimeProvider.System), new MagnetBenchmark(), new FaultBenchmark(),
    new DriverBenchmark(TimeProvider.System), new HandBenchmark(),
];
var chosen = args.Length == 1 ? benchmarks.FirstOrDefault(benchmark => benchmark.Name == args[0]) : null;
if (chosen is null)
{
    Console.Error.WriteLine($"found: '{string.Join(' ', args)}'; expected one of:");
    foreach (var benchmark in benchmarks)
        Console.Error.WriteLine($"  {benchmark.Name,-10}{benchmark.Summary}");
    return 2;
}

// A table needs room where the console is no terminal.
if (!AnsiConsole.Profile.Out.IsTerminal)
    AnsiConsole.Profile.Width = 140;
var figures = chosen.Run(AnsiConsole.Console);
foreach (var figure in figures)
    Console.WriteLine(figure);
return figures.Any(figure => figure.IsShort) ? 1 : 0;
