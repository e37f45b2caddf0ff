using AutoSweep.Core.Fitting;

namespace AutoSweep.Core.Tests.Fitting;

public class LevenbergMarquardtTests
{
    [Fact]
    public void A_straight_line_has_the_textbook_covariance()
    {
        // y = a + bx at x = -1, 0, 1 with unit variance: var a = 1/3, var b = 1/2, covariance 0 (any text on linear regression).
        var fit = LevenbergMarquardt.Fit(new Line([-1, 0, 1], [1, 2, 3]), [0, 0]);
        Assert.Equal([2, 1], fit.Parameters.Select(parameter => Math.Round(parameter, 9)));
        Assert.Equal(1.0 / 3, fit.CovarianceOf(0, 0), 12);
        Assert.Equal(0.5, fit.CovarianceOf(1, 1), 12);
        Assert.Equal(0, fit.CovarianceOf(0, 1), 12);
        Assert.Equal(Math.Log(1.0 / 6), fit.LogDeterminantOfCovariance, 12);
    }

    [Fact]
    public void Readings_that_do_not_fix_every_parameter_leave_the_covariance_unknown() =>
        Assert.True(double.IsNaN(LevenbergMarquardt.Fit(new Line([2, 2], [1, 1]), [0, 0]).CovarianceOf(0, 0)));

    [Fact]
    public void A_start_where_the_model_has_no_value_ends_at_once()
    {
        var fit = LevenbergMarquardt.Fit(new Line([double.NaN, 1], [1, 1]), [0, 0]);
        Assert.False(fit.Converged);
        Assert.Equal(0, fit.Iterations);
    }

    [Fact]
    public void A_start_of_the_wrong_length_is_refused() =>
        Assert.Throws<ArgumentException>(() => LevenbergMarquardt.Fit(new Line([1, 2], [1, 1]), [0]));

    private sealed class Line(double[] x, double[] y) : ILeastSquaresModel
    {
        public int Parameters => 2;

        public int Residuals => x.Length;

        public void Evaluate(ReadOnlySpan<double> parameters, Span<double> residuals, Span<double> jacobian)
        {
            for (var i = 0; i < x.Length; i++)
            {
                residuals[i] = parameters[0] + parameters[1] * x[i] - y[i];
                (jacobian[2 * i], jacobian[2 * i + 1]) = (1, x[i]);
            }
        }
    }
}
