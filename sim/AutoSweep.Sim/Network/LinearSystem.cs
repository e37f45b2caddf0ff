using System.Numerics;

namespace AutoSweep.Sim.Network;

/// <summary>Complex linear equations of a few unknowns: elimination with partial pivoting, in place.</summary>
internal static class LinearSystem
{
    public static Complex[] Solve(Complex[,] matrix, Complex[] right)
    {
        for (var column = 0; column < right.Length; column++)
        {
            Swap(matrix, right, column, Pivot(matrix, column));
            for (var row = column + 1; row < right.Length; row++)
                Eliminate(matrix, right, column, row);
        }

        for (var row = right.Length - 1; row >= 0; row--)
        {
            for (var column = row + 1; column < right.Length; column++)
                right[row] -= matrix[row, column] * right[column];
            right[row] /= matrix[row, row];
        }

        return right;
    }

    private static int Pivot(Complex[,] matrix, int column)
    {
        var best = column;
        for (var row = column + 1; row < matrix.GetLength(0); row++)
        {
            if (matrix[row, column].Magnitude > matrix[best, column].Magnitude) best = row;
        }

        return matrix[best, column] == Complex.Zero
            ? throw new InvalidOperationException("The network has a node without a path to ground.")
            : best;
    }

    private static void Swap(Complex[,] matrix, Complex[] right, int first, int second)
    {
        if (first == second) return;
        for (var column = 0; column < right.Length; column++)
            (matrix[first, column], matrix[second, column]) = (matrix[second, column], matrix[first, column]);
        (right[first], right[second]) = (right[second], right[first]);
    }

    private static void Eliminate(Complex[,] matrix, Complex[] right, int column, int row)
    {
        if (matrix[row, column] == Complex.Zero) return;
        var factor = matrix[row, column] / matrix[column, column];
        for (var k = column; k < right.Length; k++)
            matrix[row, k] -= factor * matrix[column, k];
        right[row] -= factor * right[column];
    }
}
