using AutoSweep.Faults;
using Spectre.Console;

namespace AutoSweep.Benchmarks.Faults;

/// <summary>Planted faults: how many are named, how many alarms are false.</summary>
internal sealed class FaultBenchmark : IBenchmark
{
    public string Name => "faults";

    public string Summary => "200 simulated generators with planted faults: named, missed, false alarms";

    public IReadOnlyList<Figure> Run(IAnsiConsole console)
    {
        var before = Environment.CpuUsage.TotalTime;
        var study = FaultStudy.Run(generators: 200, seed: 1);
        var seconds = (Environment.CpuUsage.TotalTime - before).TotalSeconds;
        var byLevel = FaultStudy.Run(generators: 200, seed: 1, withOldCapacitors: false);
        console.WriteLine(study.ConfusionTable());
        console.WriteLine(study.NamedByMultiple());
        console.WriteLine("The same with no old capacitor measured:");
        console.WriteLine(byLevel.ConfusionTable());
        foreach (var miss in study.Misses())
            console.WriteLine(miss);
        return
        [
            new("faults.missed.percent", 100 * (1 - study.NamedShare), 2),
            new("faults.false_alarms.per_healthy_generator", study.FalseAlarmsPerHealthy, 0.1),
            new("faults.without_old_capacitors.false_alarms.per_healthy_generator", byLevel.FalseAlarmsPerHealthy, 0.1),
            // A minute on the two cores that CI has, whatever else runs on them.
            new("faults.processor_time.seconds", seconds, 120),
        ];
    }
}
