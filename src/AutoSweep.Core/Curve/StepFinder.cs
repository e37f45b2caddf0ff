using MathNet.Numerics.Statistics;

namespace AutoSweep.Core.Curve;

/// <summary>Finds the places where a whole run of outputs goes up or down at once, so that the outputs beside it are not taken for outliers.</summary>
/// <param name="scatter">One standard deviation of healthy outputs in decibels.</param>
/// <param name="threshold">How many of these the medians to either side must differ.</param>
internal sealed class StepFinder(double scatter, double threshold)
{
    // Medians of seven to either side: three bad outputs together do not move them.
    private const int Side = 7;

    // Fewer outputs than this, half an octave, are bad ones, not a part of the curve.
    private const int FewestBeside = 6;

    // A slope spreads its rise over all of them; a step has most of it between two.
    private const double ShareBetweenTwo = 0.6;

    /// <summary>The run cut at its steps.</summary>
    internal IEnumerable<CurveRun> Cut(CurveRun run) => Largest(run) is { } at
        ? Cut(run.Part(0, at)).Concat(Cut(run.Part(at, run.Outputs.Count)))
        : [run];

    private int? Largest(CurveRun run) => Enumerable.Range(0, run.Outputs.Count + 1)
        .Where(at => at >= FewestBeside && run.Outputs.Count - at >= FewestBeside && IsStep(run.Decibels, at))
        .Select(at => (int?)at).MaxBy(at => Math.Abs(Rise(run.Decibels, at!.Value)));

    private bool IsStep(IReadOnlyList<double> decibels, int at)
    {
        var rise = Rise(decibels, at);
        return Math.Abs(rise) > threshold * scatter && (decibels[at] - decibels[at - 1]) / rise > ShareBetweenTwo;
    }

    private static double Rise(IReadOnlyList<double> decibels, int at) =>
        decibels.Skip(at).Take(Side).Median() - decibels.Take(at).TakeLast(Side).Median();
}
