namespace AutoSweep.Core.Fitting;

/// <summary>Where a least-squares fit ended.</summary>
public sealed class LeastSquaresFit
{
    internal LeastSquaresFit(double[] parameters, double sumOfSquares, double[] covariance, double logDeterminant, int iterations, bool converged)
    {
        Parameters = parameters;
        SumOfSquares = sumOfSquares;
        Covariance = covariance;
        LogDeterminantOfCovariance = logDeterminant;
        Iterations = iterations;
        Converged = converged;
    }

    /// <summary>The parameters of the smallest sum of squares that was found.</summary>
    public IReadOnlyList<double> Parameters { get; }

    /// <summary>The sum of squared residuals there.</summary>
    public double SumOfSquares { get; }

    /// <summary>
    /// The inverse of JᵀJ, row by row: the parameters' covariance where every residual has unit variance. Multiply by
    /// <see cref="SumOfSquares"/> over the degrees of freedom where the variance is to be told from the residuals.
    /// Not a number where the readings do not fix every parameter.
    /// </summary>
    public IReadOnlyList<double> Covariance { get; }

    /// <summary>The natural logarithm of the covariance's determinant: how much of the parameters' space remains.</summary>
    public double LogDeterminantOfCovariance { get; }

    /// <summary>How many steps were taken.</summary>
    public int Iterations { get; }

    /// <summary>False when the fit gave up: too many steps, or values that are not finite.</summary>
    public bool Converged { get; }

    /// <summary>The covariance of two parameters; see <see cref="Covariance"/>.</summary>
    public double CovarianceOf(int row, int column) => Covariance[row * Parameters.Count + column];
}
