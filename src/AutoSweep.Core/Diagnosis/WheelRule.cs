using AutoSweep.Core.Journal;
using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Diagnosis;

/// <summary>Wheels whose level swings as they turn, more than the generator's other wheels do; and levels that come and go more slowly.</summary>
internal sealed class WheelRule : IFaultRule
{
    // Beyond this many robust standard deviations a swing is no member of the others (Hampel's identifier: 3; one more for its lopsidedness).
    private const double HampelFactor = 4;

    // A swing below this many of its own standard deviations is noise: 4 is chance in a few thousand (Rayleigh distribution, exp(-8)).
    private const double NoiseFactor = 4;

    public IEnumerable<Finding> Find(DiagnosisCase job)
    {
        var sounding = job.Outputs.Where(one => one.HasTone).ToList();
        // A swing that could not be told, because its wheel turns as often as the meter samples, says nothing of what is usual.
        var told = sounding.Where(one => one.AsFound!.WheelSwingUncertainty is null || one.AsFound.WheelSwingUncertainty < job.Options.UsualWheelSwing);
        var usual = Usual([.. told.Select(one => one.AsFound!.WheelSwing).OfType<double>()], job.Options);
        return sounding.Select(one => Find(one, usual)).OfType<Finding>();
    }

    private static double Usual(List<double> swings, DiagnosisOptions options)
    {
        if (swings.Count < 5)
            return options.UsualWheelSwing;
        var median = swings.Median();
        return Math.Max(options.UsualWheelSwing, median + (HampelFactor * 1.4826 * swings.Select(swing => Math.Abs(swing - median)).Median()));
    }

    private static Finding? Find(OutputEvidence one, double usual)
    {
        var (swing, sd) = (one.AsFound!.WheelSwing, one.AsFound.WheelSwingUncertainty ?? 0);
        if (swing > usual && swing > NoiseFactor * sd)
        {
            return Finding(one, 100 * swing.Value, 100 * sd, FormattableString.Invariant(
                $"The level swings by {100 * swing:0.0} % (peak) {one.AsFound.ToneHertz / one.Output.WheelTeeth:0.0} times a second, once a turn of its wheel; ")
                + FormattableString.Invariant($"up to {100 * usual:0.0} % is usual here."));
        }

        return one.AsFound.Flags.Contains(SurveyFinding.Unsteady)
            ? Finding(one, 100 * one.AsFound.NoiseMillivolts / one.AsFound.Millivolts, null, FormattableString.Invariant(
                $"Its samples scatter by {100 * one.AsFound.NoiseMillivolts / one.AsFound.Millivolts:0.0} % (one standard deviation)")
                + (swing is null ? "." : ", though not at the wheel's own rate: it comes and goes more slowly."))
            : null;
    }

    private static Finding Finding(OutputEvidence one, double size, double? sd, string evidence) => new()
    {
        Fault = GeneratorFault.UnsteadyWheel,
        Output = one.Number,
        Size = size,
        SizeUncertainty = sd,
        Unit = "%",
        Evidence = evidence,
        Confirm = FaultWords.Confirm(GeneratorFault.UnsteadyWheel),
    };
}
