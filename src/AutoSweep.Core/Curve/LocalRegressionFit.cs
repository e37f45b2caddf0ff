namespace AutoSweep.Core.Curve;

/// <summary>What <see cref="LocalRegression"/> fitted.</summary>
public sealed class LocalRegressionFit
{
    private readonly double[][] _rows;

    internal LocalRegressionFit(double[][] rows, double[] fitted) => (_rows, Fitted) = (rows, fitted);

    /// <summary>The fitted value at each place.</summary>
    public IReadOnlyList<double> Fitted { get; }

    /// <summary>How much a place's fitted value follows its own value, 0 to 1: 1 where nothing but itself was left to fit through.</summary>
    public double Leverage(int index) => _rows[index][index];

    /// <summary>The variance of the residual at a place, in units of the values' variance, with the robust weights taken as given.</summary>
    public double ResidualVariance(int index) =>
        1 - (2 * _rows[index][index]) + _rows[index].Sum(weight => weight * weight);
}
