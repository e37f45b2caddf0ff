using AutoSweep.Core.Journal;
using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Diagnosis;

/// <summary>All tones off by one ratio. The motor follows the mains, so the hum tells which of the two it is, where it was counted.</summary>
internal sealed class SpeedRule : IFaultRule
{
    // Fewer counts might be a few miswired outputs.
    private const int FewestCounts = 5;

    // Two tones tell the same speed when they agree within this share: mains wander and counting (as in ToneRecognition).
    private const double Agreement = 0.003;

    public IEnumerable<Finding> Find(DiagnosisCase job)
    {
        var ratios = Ratios(job);
        if (ratios.Count < FewestCounts)
            yield break;
        var off = ratios.Median() - 1;
        var sd = 1.4826 * ratios.Select(ratio => Math.Abs(ratio - 1 - off)).Median();
        if (Math.Abs(off) <= job.Options.UsualSpeed)
            yield break;
        yield return new()
        {
            Fault = GeneratorFault.OffSpeed,
            Size = 100 * off,
            SizeUncertainty = 100 * sd / Math.Sqrt(ratios.Count),
            Unit = "%",
            Evidence = FormattableString.Invariant($"{ratios.Count} tones are off by {100 * off:+0.00;-0.00} % ({1200 * Math.Log2(1 + off):+0;-0} cents) together. ")
                + Cause(off, job),
            Confirm = FaultWords.Confirm(GeneratorFault.OffSpeed),
        };
    }

    /// <summary>Whether a tone that is none of the profile's is its own output's at the speed of the others.</summary>
    internal static bool Explains(DiagnosisCase job, OutputEvidence one)
    {
        var ratios = Ratios(job);
        return ratios.Count >= FewestCounts && one.AsFound?.ToneHertz is { } hertz
            && Math.Abs((hertz / one.NominalHertz / ratios.Median()) - 1) < Agreement;
    }

    private static List<double> Ratios(DiagnosisCase job) => [.. job.Outputs
        .Where(one => one.AsFound is { ToneHertz: > 0 }).Select(one => one.AsFound!.ToneHertz!.Value / one.NominalHertz)];

    private static string Cause(double off, DiagnosisCase job)
    {
        if (HumOff(job) is { } hum)
        {
            return Math.Abs(hum - off) < Agreement / 3
                ? FormattableString.Invariant($"The hum is off by {100 * hum:+0.00;-0.00} % too: the supply is, and the motor follows it.")
                : FormattableString.Invariant($"The hum is off by {100 * hum:+0.00;-0.00} % only: the motor is not in step with its supply.");
        }

        if (Math.Abs(off) <= job.Options.MainsLimit)
            return "A supply may be off by as much (EN 50160: 1 % either way), so this need not be the generator; no hum was counted to tell.";
        return off < 0
            ? "No supply by EN 50160 is off by as much: the motor drags behind, or it runs on a frequency converter or a foreign supply."
            : "No supply by EN 50160 is off by as much, and a motor cannot run ahead of it: a frequency converter or a foreign supply.";
    }

    private static double? HumOff(DiagnosisCase job)
    {
        var hums = job.Outputs.Select(one => one.AsFound?.HumHertz).OfType<double>()
            .Select(hertz => (hertz / (job.MainsHertz * Math.Max(1, Math.Round(hertz / job.MainsHertz)))) - 1).ToList();
        return hums.Count == 0 ? null : hums.Median();
    }
}
