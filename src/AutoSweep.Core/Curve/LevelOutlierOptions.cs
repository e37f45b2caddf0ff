namespace AutoSweep.Core.Curve;

/// <summary>How outliers are told from a curve's shape.</summary>
public sealed record LevelOutlierOptions
{
    /// <summary>How many standard deviations of healthy outputs count as far.</summary>
    /// <value>Default 4: with it 4 of 100 healthy generators of 91 outputs raise an alarm (measured), with 3.5 it is 10.</value>
    public double Threshold { get; init; } = 4;

    /// <summary>How many outputs a local line is fitted through.</summary>
    /// <value>Default 11, about an octave: five to either side, the outermost without weight.</value>
    public int Neighbours { get; init; } = 11;

    /// <summary>How often the residuals weigh anew.</summary>
    /// <value>Default 4.</value>
    public int RobustRounds { get; init; } = 4;

    /// <summary>Runs shorter than this are compared with their median instead of local lines.</summary>
    /// <value>Default 7: with six, a line at the end hangs on one output.</value>
    public int ShortRun { get; init; } = 7;

    /// <summary>With how many outputs' weight the scatter of the whole generator counts beside that of the group.</summary>
    /// <value>Default 6: a group of three has hardly a scatter of its own, one of 36 has.</value>
    public double SharedScatterWeight { get; init; } = 6;

    /// <summary>How many standard deviations the medians to either side must differ to be a step.</summary>
    /// <value>Default 5.</value>
    public double StepThreshold { get; init; } = 5;
}
