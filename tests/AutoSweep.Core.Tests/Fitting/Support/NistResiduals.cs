using System.Numerics;
using AutoSweep.Core.Fitting;

namespace AutoSweep.Core.Tests.Fitting.Support;

/// <summary>A NIST set as the fitter wants it; derivatives by a complex step (Squire and Trapp, SIAM Review 40, 1998), exact to rounding.</summary>
internal sealed class NistResiduals(NistSet set) : ILeastSquaresModel
{
    private const double Step = 1e-100;

    public int Parameters => set.Certified.Length;

    public int Residuals => set.Y.Length;

    public void Evaluate(ReadOnlySpan<double> parameters, Span<double> residuals, Span<double> jacobian)
    {
        var complex = new Complex[Parameters];
        for (var j = 0; j < Parameters; j++)
            complex[j] = parameters[j];
        for (var i = 0; i < set.Y.Length; i++)
        {
            residuals[i] = set.Model(complex, set.X[i]).Real - set.Y[i];
            for (var j = 0; j < Parameters; j++)
            {
                complex[j] = new(parameters[j], Step);
                jacobian[i * Parameters + j] = set.Model(complex, set.X[i]).Imaginary / Step;
                complex[j] = parameters[j];
            }
        }
    }
}
