using MathNet.Numerics.LinearAlgebra;

namespace AutoSweep.Core.Fitting;

/// <summary>The outcome of a weighted linear least-squares fit.</summary>
/// <param name="Coefficients">One a column of the design.</param>
/// <param name="Covariance">(XᵀWX)⁻¹ with W = 1/sd²: the coefficients' covariance if the standard deviations given are right. For
/// observations known only up to a common scale multiply by <see cref="Variance"/>.</param>
/// <param name="Residuals">Observed less fitted, in the observations' unit.</param>
/// <param name="Leverages">How far each observation draws the fit to itself, 0 to 1.</param>
/// <param name="ChiSquared">The sum of the squared residuals, each over its standard deviation.</param>
public sealed record LinearFit(
    Vector<double> Coefficients, Matrix<double> Covariance, Vector<double> Residuals, Vector<double> Leverages, double ChiSquared)
{
    /// <summary>Observations less coefficients.</summary>
    public int DegreesOfFreedom => Residuals.Count - Coefficients.Count;

    /// <summary>The mean square of the weighted residuals: 1 where standard deviations and model are right; not a number without
    /// degrees of freedom.</summary>
    public double Variance => ChiSquared / DegreesOfFreedom;

    /// <summary>By how much χ² would fall if an observation were left out.</summary>
    /// <param name="index">The observation.</param>
    /// <param name="sd">Its standard deviation.</param>
    public double ChiSquaredWithout(int index, double sd) => Leverages[index] > 1 - 1e-9
        ? 0 // nothing else tells that coefficient: the observation fits itself
        : Residuals[index] * Residuals[index] / (sd * sd) / (1 - Leverages[index]);
}
