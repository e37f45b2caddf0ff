namespace AutoSweep.Worker.Page.Intake;

/// <summary>How parts are measured.</summary>
/// <param name="IsTyped">Whether a person types what a meter without a port shows, though the bench may have one with a port.</param>
/// <param name="AccuracyPercent">The accuracy of that meter in per cent of reading.</param>
public sealed record PartOptions(bool IsTyped, double AccuracyPercent)
{
    /// <summary>A handheld meter's accuracy in per cent (common practice, no source).</summary>
    public const double HandheldPercent = 0.5;
}
