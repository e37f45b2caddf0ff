namespace AutoSweep.Core.Fitting;

/// <summary>Residuals whose sum of squares is to be made smallest, and how they change with the parameters.</summary>
/// <remarks>
/// Weights and prior beliefs are the model's business: a residual is already divided by its standard deviation, and a belief about a
/// parameter is one more residual. Residuals that are not finite mark parameters that the model does not allow.
/// </remarks>
public interface ILeastSquaresModel
{
    /// <summary>How many parameters there are; 1 or more.</summary>
    int Parameters { get; }

    /// <summary>How many residuals there are, beliefs included; at least as many as parameters.</summary>
    int Residuals { get; }

    /// <summary>Computes every residual and its derivatives.</summary>
    /// <param name="parameters">Where.</param>
    /// <param name="residuals">Receives model minus observation, over its standard deviation.</param>
    /// <param name="jacobian">Receives the derivatives, row by row: residual i after parameter j at i × Parameters + j.</param>
    void Evaluate(ReadOnlySpan<double> parameters, Span<double> residuals, Span<double> jacobian);
}
