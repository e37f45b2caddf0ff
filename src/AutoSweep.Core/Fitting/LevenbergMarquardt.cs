using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace AutoSweep.Core.Fitting;

/// <summary>Weighted nonlinear least squares by Levenberg-Marquardt.</summary>
/// <remarks>
/// The steps are MathNet.Numerics' (Madsen, Nielsen, Tingleff, "Methods for Non-Linear Least Squares Problems", DTU 2004). Its
/// damping adds the same amount to every parameter, so parameters of different size are brought to one scale first.
/// </remarks>
public static class LevenbergMarquardt
{
    /// <summary>Fits a model from a starting point.</summary>
    /// <param name="model">The residuals.</param>
    /// <param name="start">Where to begin; one figure a parameter.</param>
    /// <param name="tolerance">
    /// The step at which the fit is done, measured by how far it moves the residuals; 1e-4 is ample where residuals are in standard deviations.
    /// </param>
    /// <param name="mostIterations">The most steps.</param>
    /// <returns>The best found; <see cref="LeastSquaresFit.Converged"/> tells whether it is a minimum.</returns>
    /// <exception cref="ArgumentException">The start has another number of parameters than the model.</exception>
    public static LeastSquaresFit Fit(ILeastSquaresModel model, ReadOnlySpan<double> start, double tolerance = 1e-10, int mostIterations = 200)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (start.Length != model.Parameters)
            throw new ArgumentException($"The start holds {start.Length} figures, the model has {model.Parameters} parameters.", nameof(start));
        var objective = new ScaledObjective(model, start, 10 * mostIterations);
        if (!objective.StartIsAllowed)
            return objective.Outcome(0, false);
        var minimizer = new LevenbergMarquardtMinimizer(1e-3, tolerance * 1e-6, tolerance, 1e-28, mostIterations);
        var ended = minimizer.FindMinimum(objective, Vector<double>.Build.Dense(model.Parameters, 1.0));
        return objective.Outcome(
            Math.Max(ended.Iterations, 0),
            ended.ReasonForExit is ExitCondition.RelativePoints or ExitCondition.RelativeGradient or ExitCondition.Converged);
    }
}
