namespace AutoSweep.Core.Diagnosis;

/// <summary>Outputs off the curve's shape with their filter at its peak: the magnet is what is left to explain it.</summary>
internal sealed class MagnetRule : IFaultRule
{
    public IEnumerable<Finding> Find(DiagnosisCase job) => CurveShape.Of(job) is { } shape
        ? shape.Points.Where(point => Math.Abs(point.Decibels) > point.Limit).Select(Find)
        : [];

    private static Finding Find(ShapePoint point)
    {
        var fault = point.Decibels < 0 ? GeneratorFault.WeakMagnet : GeneratorFault.StrongMagnet;
        return new()
        {
            Fault = fault,
            Output = point.One.Number,
            Size = point.Decibels,
            SizeUncertainty = point.Scale,
            Unit = "dB",
            Evidence = FormattableString.Invariant($"{Math.Abs(point.Decibels):0.0} dB {(point.Decibels < 0 ? "under" : "over")} the curve through its group")
                + (point.One.IsFiltered ? " with its filter at the peak" : "")
                + FormattableString.Invariant($"; the others scatter by {point.Scale:0.0} dB (one standard deviation), {point.Limit:0.0} dB is the limit."),
            Confirm = FaultWords.Confirm(fault),
        };
    }
}
