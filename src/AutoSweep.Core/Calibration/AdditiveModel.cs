using AutoSweep.Core.Fitting;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace AutoSweep.Core.Calibration;

/// <summary>A fixture's law: a set measures the stray and the sum of its relays.</summary>
internal sealed class AdditiveModel(IReadOnlyList<CalibrationSet> sets, int relays, ReadingNoise noise, double noiseDegrees)
{
    // In 10,000 sound fixtures one is suspected.
    private const double Suspicious = 1e-4;

    public IReadOnlyList<CalibrationSet> Sets => sets;

    public int Relays => relays;

    /// <summary>The standard deviation of a set's mean.</summary>
    public double Sd(CalibrationSet set) => Math.Sqrt(noise.Variance(set.Mean) / set.Count);

    /// <summary>Fits some of the sets, with a column more where one is given.</summary>
    /// <returns>Null where these sets do not tell every relay.</returns>
    public LinearFit? Fit(IReadOnlyList<CalibrationSet> used, Func<CalibrationSet, double>? extra = null) => Fit(
        used, relays, static set => set.Mean, Sd, extra);

    /// <summary>Fits any quantity that adds up over relays.</summary>
    public static LinearFit? Fit(
        IReadOnlyList<CalibrationSet> used, int relays, Func<CalibrationSet, double> value, Func<CalibrationSet, double> sd,
        Func<CalibrationSet, double>? extra = null)
    {
        var columns = 1 + relays + (extra is null ? 0 : 1);
        if (used.Count < columns)
            return null;
        var design = Matrix<double>.Build.Dense(used.Count, columns, (row, column) => column switch
        {
            0 => 1,
            _ when column <= relays => used[row].Holds(column - 1) ? 1 : 0,
            _ => extra!(used[row]),
        });
        try
        {
            return WeightedLeastSquares.Solve(design, Column(used, value), Column(used, sd));
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    /// <summary>How probable it is that sound relays scatter so much.</summary>
    public double Probability(LinearFit fit) => fit.DegreesOfFreedom == 0 ? 1
        : double.IsFinite(noiseDegrees) ? 1 - FisherSnedecor.CDF(fit.DegreesOfFreedom, noiseDegrees, fit.Variance)
        : 1 - ChiSquared.CDF(fit.DegreesOfFreedom, fit.ChiSquared);

    /// <summary>Whether values add up as far as the noise lets it be seen.</summary>
    public bool Holds(LinearFit fit) => Probability(fit) > Suspicious;

    /// <summary>What a fit says of a set.</summary>
    public double Predicted(LinearFit fit, CalibrationSet set) =>
        fit.Coefficients[0] + Enumerable.Range(0, relays).Where(set.Holds).Sum(relay => fit.Coefficients[1 + relay]);

    private static Vector<double> Column(IReadOnlyList<CalibrationSet> used, Func<CalibrationSet, double> value) =>
        Vector<double>.Build.DenseOfEnumerable(used.Select(value));
}
