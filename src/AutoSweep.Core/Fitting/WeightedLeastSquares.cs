using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace AutoSweep.Core.Fitting;

/// <summary>Weighted linear least squares, by the QR factors of the weighted design.</summary>
/// <remarks>By QR, not by the normal equations, which lose half of the digits (NIST StRD's Wampler sets show it).</remarks>
public static class WeightedLeastSquares
{
    /// <summary>Fits observations by a linear combination of the design's columns.</summary>
    /// <param name="design">One row an observation, one column a coefficient; at least as many rows as columns.</param>
    /// <param name="observations">What was observed.</param>
    /// <param name="standardDeviations">One an observation, above 0; only their ratios matter to the coefficients.</param>
    /// <exception cref="ArgumentException">The observations do not tell every coefficient.</exception>
    public static LinearFit Solve(Matrix<double> design, Vector<double> observations, Vector<double> standardDeviations)
    {
        var weighted = Matrix<double>.Build.Dense(
            design.RowCount, design.ColumnCount, (row, column) => design[row, column] / standardDeviations[row]);
        var scale = weighted.ColumnNorms(2);
        var factors = (weighted * Matrix<double>.Build.DenseOfDiagonalVector(scale.Map(one => one > 0 ? 1 / one : 1))).QR(QRMethod.Thin);
        if (factors.R.Diagonal().Any(one => !(Math.Abs(one) > 1e-12)))
            throw new ArgumentException("The observations do not tell every coefficient.", nameof(design));
        var scaled = factors.R.Solve(factors.Q.TransposeThisAndMultiply(observations.PointwiseDivide(standardDeviations)));
        var coefficients = scaled.PointwiseDivide(scale);
        var inverse = factors.R.Inverse();
        var root = Matrix<double>.Build.DenseOfDiagonalVector(scale.Map(one => 1 / one)) * inverse;
        var residuals = observations - (design * coefficients);
        return new(
            coefficients,
            root * root.Transpose(),
            residuals,
            Vector<double>.Build.Dense(design.RowCount, row => factors.Q.Row(row).DotProduct(factors.Q.Row(row))),
            residuals.PointwiseDivide(standardDeviations).DotProduct(residuals.PointwiseDivide(standardDeviations)));
    }
}
