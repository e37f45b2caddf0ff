using System.Globalization;
using System.Text;
using AutoSweep.Core.Diagnosis;

namespace AutoSweep.Faults;

/// <summary>The outcome of a study.</summary>
/// <param name="Runs">The generators.</param>
public sealed record FaultStudyResult(IReadOnlyList<FaultRun> Runs)
{
    /// <summary>A planted fault counts from this multiple of the noise on.</summary>
    public const double CountedFrom = 2;

    /// <summary>The planted faults that count.</summary>
    public IEnumerable<(FaultRun Run, PlantedFaultSize Planted)> Counted =>
        Runs.SelectMany(run => run.Planted.Select(planted => (run, planted))).Where(one => one.planted.NoiseMultiple > CountedFrom);

    /// <summary>The share of them that were named at their place.</summary>
    public double NamedShare => Counted.Count(one => one.Run.IsNamed(one.Planted)) / (double)Counted.Count();

    /// <summary>False alarms in a generator without a fault, on average.</summary>
    public double FalseAlarmsPerHealthy => Healthy.Sum(run => run.FalseAlarms.Count()) / (double)Healthy.Count();

    /// <summary>False alarms in a generator with faults, on average.</summary>
    public double FalseAlarmsPerFaulty => Runs.Except(Healthy).Sum(run => run.FalseAlarms.Count()) / (double)Runs.Except(Healthy).Count();

    /// <summary>The generators without a fault.</summary>
    public IEnumerable<FaultRun> Healthy => Runs.Where(run => run.Planted.Count == 0);

    /// <summary>What was planted against what was named there, of those that count; a fault with two names has two marks.</summary>
    public string ConfusionTable()
    {
        var kinds = Enum.GetValues<GeneratorFault>();
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"{"planted",-20}{"count",6}{"named",7} |"));
        foreach (var kind in kinds)
            text.Append(CultureInfo.InvariantCulture, $"{Short(kind),9}");
        text.AppendLine(CultureInfo.InvariantCulture, $"{"nothing",9}{"too small",11}");
        foreach (var planted in kinds)
            AppendRow(text, planted, kinds);
        return text.Append(Row("nothing, healthy", Healthy)).Append(Row("nothing, faulty", Runs.Except(Healthy))).ToString();
    }

    /// <summary>How many are named by how far they stand out of the noise: the nearer to it, the fewer.</summary>
    public string NamedByMultiple()
    {
        (double From, double To)[] bands = [(0, 2), (2, 3), (3, 4), (4, 6), (6, double.PositiveInfinity)];
        return string.Concat(bands.Select(band =>
        {
            var rows = Runs.SelectMany(run => run.Planted.Select(planted => (run, planted)))
                .Where(one => one.planted.NoiseMultiple > band.From && one.planted.NoiseMultiple <= band.To).ToList();
            return string.Create(CultureInfo.InvariantCulture,
                $"{band.From:0} to {band.To:0} times the noise: {rows.Count(one => one.run.IsNamed(one.planted))} of {rows.Count} named{Environment.NewLine}");
        }));
    }

    /// <summary>The faults that count and were not named, and the alarms without a fault, a line each.</summary>
    public IEnumerable<string> Misses() =>
    [
        .. Counted.Where(one => !one.Run.IsNamed(one.Planted)).Select(one => string.Create(CultureInfo.InvariantCulture,
            $"generator {one.Run.Index}: {one.Planted.Words}, {one.Planted.NoiseMultiple:0.0} times the noise, named {string.Join(' ', one.Run.NamedAt(one.Planted))}")),
        .. Runs.SelectMany(run => run.FalseAlarms.Select(finding => string.Create(CultureInfo.InvariantCulture,
            $"generator {run.Index} ({run.Planted.Count} planted): {finding.Fault} at {finding.Output}: {finding.Evidence}"))),
    ];

    private void AppendRow(StringBuilder text, GeneratorFault planted, GeneratorFault[] kinds)
    {
        var rows = Counted.Where(one => one.Planted.Fault == planted).ToList();
        text.Append(CultureInfo.InvariantCulture, $"{FaultWords.Name(planted),-20}{rows.Count,6}{rows.Count(one => one.Run.IsNamed(one.Planted)),7} |");
        foreach (var kind in kinds)
            text.Append(CultureInfo.InvariantCulture, $"{Mark(rows.Count(one => one.Run.NamedAt(one.Planted).Contains(kind))),9}");
        var small = Runs.SelectMany(run => run.Planted).Count(one => one.Fault == planted && one.NoiseMultiple <= CountedFrom);
        text.AppendLine(CultureInfo.InvariantCulture, $"{Mark(rows.Count(one => !one.Run.NamedAt(one.Planted).Any())),9}{Mark(small),11}");
    }

    private static string Row(string name, IEnumerable<FaultRun> runs)
    {
        var alarms = runs.SelectMany(run => run.FalseAlarms).ToList();
        return string.Create(CultureInfo.InvariantCulture, $"{name,-20}{runs.Count(),6}{"",7} |")
            + string.Concat(Enum.GetValues<GeneratorFault>().Select(kind => $"{Mark(alarms.Count(finding => finding.Fault == kind)),9}")) + Environment.NewLine;
    }

    private static string Mark(int count) => count == 0 ? "." : count.ToString(CultureInfo.InvariantCulture);

    private static string Short(GeneratorFault kind) => kind switch
    {
        GeneratorFault.DeadPickup => "dead",
        GeneratorFault.MiswiredTerminals => "miswired",
        GeneratorFault.CapacitorDrifted => "drifted",
        GeneratorFault.CapacitorOpen => "open",
        GeneratorFault.CapacitorLeaky => "leaky",
        GeneratorFault.WeakMagnet => "weak",
        GeneratorFault.StrongMagnet => "strong",
        GeneratorFault.UnsteadyWheel => "unsteady",
        GeneratorFault.HumWithoutTone => "hum",
        GeneratorFault.OffSpeed => "speed",
        _ => "loading",
    };
}
