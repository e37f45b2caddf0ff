using AutoSweep.Core.Generator;
using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Network;
using AutoSweep.Sim.Physics;

namespace AutoSweep.Sim.Scoring;

/// <summary>Compares what a job has left with what the bench file knows.</summary>
internal sealed class JobScorer(BenchDefinition bench, GeneratorProfile profile)
{
    /// <summary>The largest error that is good, in half-power half-widths: it costs a hundredth of a decibel.</summary>
    public const double Limit = 0.05;

    // What a survey alone can flag; the rest is the diagnosis's matter.
    private static readonly FaultKind[] SurveyKinds = [FaultKind.Dead, FaultKind.HumOnly, FaultKind.Swapped, FaultKind.Unsteady];
    private static readonly string[] SwappedWords = ["swapped", "wrongtone"];

    public JobScore Score(IReadOnlyList<SweepRow> sweeps, IReadOnlyList<SurveyRow>? survey)
    {
        var planned = bench.Truth.Outputs.Where(output => output.Peak is not null).ToList();
        var generator = new GeneratorModel(bench, profile);
        return new()
        {
            Bench = bench.Name,
            Outputs = [.. planned.Select(truth => Score(truth, [.. sweeps.Where(row => row.Output == truth.Output)], generator))],
            NotPlanned = [.. sweeps.Select(row => row.Output).Except(planned.Select(truth => truth.Output)).Order()],
            Flags = survey is null ? [] : [.. Flags(survey)],
            Surveyed = survey?.GroupBy(row => row.Output).Count(group => group.Count() == 1) ?? 0,
        };
    }

    private OutputScore Score(OutputTruth truth, List<SweepRow> rows, GeneratorModel generator)
    {
        var peak = truth.Peak!;
        var (found, readings) = rows.Count == 0 ? (double.NaN, 0) : (rows[^1].PeakPicofarads, rows[^1].Readings);
        var error = (found - peak.Picofarads) / peak.HalfWidthPicofarads;
        return new(
            truth.Output, rows.Count, peak.Picofarads, found, error, Loss(truth, found, generator), readings,
            Good: rows.Count == 1 && Math.Abs(error) <= Limit);
    }

    private double Loss(OutputTruth truth, double foundPicofarads, GeneratorModel generator)
    {
        if (!double.IsFinite(foundPicofarads)) return double.PositiveInfinity;
        var number = generator.WiredTo(truth.Output);
        BilinearResponse response = generator.Network(number)
            .Response(generator.ToneHertz(number, bench.Mains.Hertz), bench.Fixture.LossTangent);
        return 20 * Math.Log10(response.Level(truth.Peak!.Picofarads * 1e-12) / response.Level(foundPicofarads * 1e-12));
    }

    private IEnumerable<FlagScore> Flags(IReadOnlyList<SurveyRow> survey)
    {
        var planted = bench.Truth.Faults.Where(fault => SurveyKinds.Contains(fault.Kind)).SelectMany(Terminals).ToDictionary(pair => pair.Output, pair => pair.Kind);
        foreach (var output in bench.Outputs.Select(output => output.Number))
        {
            var flags = string.Join(' ', survey.Where(row => row.Output == output).Select(row => row.Flags).Where(text => text.Length > 0));
            if (planted.TryGetValue(output, out var kind)) yield return new(output, kind.ToString(), flags, Says(flags, kind));
            else if (flags.Length > 0) yield return new(output, "", flags, Found: false);
        }
    }

    private static IEnumerable<(int Output, FaultKind Kind)> Terminals(PlantedFault fault) => fault.Partner is { } partner
        ? [(fault.Output, fault.Kind), (partner, fault.Kind)]
        : [(fault.Output, fault.Kind)];

    // Words, whatever stands between them: "hum only", "hum-only" and "HumOnly" are the same.
    private static bool Says(string flags, FaultKind kind)
    {
        var letters = new string([.. flags.Where(char.IsAsciiLetter)]);
        return (kind == FaultKind.Swapped ? SwappedWords : [kind.ToString()])
            .Any(word => letters.Contains(word, StringComparison.OrdinalIgnoreCase));
    }
}
