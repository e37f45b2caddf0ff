namespace AutoSweep.Core.Fitting;

/// <summary>The inverse of a small normal matrix JᵀJ.</summary>
/// <remarks>MathNet's factorizations allocate several matrices each; a search needs this inverse for two to seven parameters some twenty times.</remarks>
internal static class SmallCholesky
{
    /// <summary>Inverts JᵀJ.</summary>
    /// <param name="jacobian">J, row by row.</param>
    /// <param name="rows">Rows of J.</param>
    /// <param name="size">Columns of J; at most 16.</param>
    /// <param name="inverse">Receives the inverse; not a number where JᵀJ is singular.</param>
    /// <returns>The natural logarithm of the inverse's determinant, or not a number.</returns>
    internal static double InvertNormal(ReadOnlySpan<double> jacobian, int rows, int size, Span<double> inverse)
    {
        Span<double> lower = stackalloc double[size * size];
        Span<double> scale = stackalloc double[size];
        Normal(jacobian, rows, size, lower, scale);
        var logDeterminant = Factor(lower, size);
        if (double.IsNaN(logDeterminant))
        {
            inverse.Fill(double.NaN);
            return double.NaN;
        }
        InvertFromFactor(lower, size, inverse);
        for (var i = 0; i < size; i++)
        {
            logDeterminant -= 2 * Math.Log(scale[i]);
            for (var j = 0; j < size; j++)
                inverse[i * size + j] /= scale[i] * scale[j];
        }
        return logDeterminant;
    }

    // Columns are brought to unit length first: parameters of NIST's sets differ by ten decades.
    private static void Normal(ReadOnlySpan<double> jacobian, int rows, int size, Span<double> normal, Span<double> scale)
    {
        for (var i = 0; i < rows; i++)
            for (var j = 0; j < size; j++)
                scale[j] += jacobian[i * size + j] * jacobian[i * size + j];
        for (var j = 0; j < size; j++)
            scale[j] = scale[j] > 0 ? Math.Sqrt(scale[j]) : 1;
        for (var i = 0; i < rows; i++)
            for (var j = 0; j < size; j++)
                for (var k = 0; k <= j; k++)
                    normal[j * size + k] += jacobian[i * size + j] / scale[j] * (jacobian[i * size + k] / scale[k]);
    }

    private static double Factor(Span<double> a, int size)
    {
        var logDeterminant = 0.0;
        for (var j = 0; j < size; j++)
        {
            for (var k = 0; k < j; k++)
                a[j * size + j] -= a[j * size + k] * a[j * size + k];
            if (!(a[j * size + j] > 1e-15))
                return double.NaN;
            a[j * size + j] = Math.Sqrt(a[j * size + j]);
            logDeterminant -= 2 * Math.Log(a[j * size + j]);
            for (var i = j + 1; i < size; i++)
            {
                for (var k = 0; k < j; k++)
                    a[i * size + j] -= a[i * size + k] * a[j * size + k];
                a[i * size + j] /= a[j * size + j];
            }
        }
        return logDeterminant;
    }

    private static void InvertFromFactor(Span<double> lower, int size, Span<double> inverse)
    {
        Span<double> column = stackalloc double[size];
        for (var c = 0; c < size; c++)
        {
            for (var i = 0; i < size; i++)
            {
                column[i] = i == c ? 1 : 0;
                for (var k = 0; k < i; k++)
                    column[i] -= lower[i * size + k] * column[k];
                column[i] /= lower[i * size + i];
            }
            for (var i = size - 1; i >= 0; i--)
            {
                for (var k = i + 1; k < size; k++)
                    column[i] -= lower[k * size + i] * column[k];
                column[i] /= lower[i * size + i];
                inverse[i * size + c] = column[i];
            }
        }
    }
}
