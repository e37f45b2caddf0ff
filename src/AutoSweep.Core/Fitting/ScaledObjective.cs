using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.Optimization;

namespace AutoSweep.Core.Fitting;

/// <summary>A least-squares model as MathNet.Numerics' minimizer wants it: steps away from the start, in one scale.</summary>
/// <remarks>The start is (1, 1, …, 1), so that the minimizer's relative step tolerance has something to be relative to.</remarks>
internal sealed class ScaledObjective : IObjectiveModel
{
    private readonly ILeastSquaresModel _model;
    private readonly double[] _start;
    private readonly double[] _scale;
    private readonly double[] _parameters;
    private readonly double[] _residuals;
    private readonly double[] _jacobian;
    private readonly double[] _best;
    private double _bestValue = double.PositiveInfinity;

    internal ScaledObjective(ILeastSquaresModel model, ReadOnlySpan<double> start, int mostEvaluations)
    {
        _model = model;
        MostEvaluations = mostEvaluations;
        _start = start.ToArray();
        _parameters = start.ToArray();
        _best = start.ToArray();
        _residuals = new double[model.Residuals];
        _jacobian = new double[model.Residuals * model.Parameters];
        _scale = new double[model.Parameters];
        model.Evaluate(_parameters, _residuals, _jacobian);
        StartIsAllowed = Array.TrueForAll(_residuals, double.IsFinite) && Array.TrueForAll(_jacobian, double.IsFinite);
        ChooseScale();
        Point = new DenseVector(model.Parameters);
    }

    /// <summary>Whether the model gives finite residuals and derivatives at the start.</summary>
    internal bool StartIsAllowed { get; }

    private int MostEvaluations { get; }

    public Vector<double> Point { get; private set; }

    public double Value { get; private set; }

    public Vector<double> Gradient => Gradients();

    public Matrix<double> Hessian => NormalMatrix();

    public int FunctionEvaluations { get; set; }

    public int JacobianEvaluations { get; set; }

    // Zero keeps the minimizer from a pseudo-inverse that Outcome replaces by a Cholesky factor a hundred times cheaper.
    public int DegreeOfFreedom => 0;

    public bool IsGradientSupported => true;

    public bool IsHessianSupported => true;

    public Vector<double> ObservedY => new DenseVector(_residuals.Length);

    public Matrix<double> Weights => null!;

    public Vector<double> ModelValues => new DenseVector((double[])_residuals.Clone());

    public IObjectiveModel CreateNew() => new ScaledObjective(_model, _start, MostEvaluations);

    public IObjectiveModel Fork() => new ScaledObjective(_model, _start, MostEvaluations);

    public IObjectiveFunction ToObjectiveFunction() => throw new NotSupportedException("The fit needs residuals; a plain objective has none.");

    public void SetParameters(Vector<double> initialGuess, List<bool>? isFixed = null) => Point = initialGuess;

    public void EvaluateAt(Vector<double> parameters)
    {
        Point = parameters;
        for (var i = 0; i < _parameters.Length; i++)
            _parameters[i] = _start[i] + (parameters[i] - 1) * _scale[i];
        _model.Evaluate(_parameters, _residuals, _jacobian);
        FunctionEvaluations++;
        // A value that is not a number is the minimizer's only way out of its inner loop once its damping has overflowed.
        Value = FunctionEvaluations > MostEvaluations ? double.NaN : SumOfSquares();
        if (Value < _bestValue)
        {
            _bestValue = Value;
            _parameters.CopyTo(_best, 0);
        }
    }

    internal LeastSquaresFit Outcome(int iterations, bool converged)
    {
        // The minimizer may end on a step that it refused.
        var size = _best.Length;
        _model.Evaluate(_best, _residuals, _jacobian);
        var covariance = new double[size * size];
        var logDeterminant = SmallCholesky.InvertNormal(_jacobian, _residuals.Length, size, covariance);
        return new LeastSquaresFit(_best, SumOfSquares(), covariance, logDeterminant, iterations, converged);
    }

    private double SumOfSquares()
    {
        var sum = 0.0;
        foreach (var residual in _residuals)
            sum += residual * residual;
        // The minimizer stops at a value that is not a number but steps back from a large one.
        return double.IsFinite(sum) ? sum : 1e300;
    }

    private void ChooseScale()
    {
        for (var j = 0; j < _scale.Length; j++)
        {
            var sum = 0.0;
            for (var i = 0; i < _residuals.Length; i++)
                sum += _jacobian[i * _scale.Length + j] * _jacobian[i * _scale.Length + j];
            _scale[j] = sum > 0 && double.IsFinite(sum) ? 1 / Math.Sqrt(sum) : 1;
        }
    }

    private DenseVector Gradients()
    {
        var size = _scale.Length;
        var gradient = new double[size];
        for (var i = 0; i < _residuals.Length; i++)
            for (var j = 0; j < size; j++)
                gradient[j] += _jacobian[i * size + j] * _residuals[i] * _scale[j];
        return new DenseVector(gradient);
    }

    private DenseMatrix NormalMatrix()
    {
        var size = _scale.Length;
        var normal = new double[size * size];
        for (var i = 0; i < _residuals.Length; i++)
            for (var j = 0; j < size; j++)
                for (var k = 0; k < size; k++)
                    normal[k * size + j] += _jacobian[i * size + j] * _jacobian[i * size + k] * _scale[j] * _scale[k];
        return new DenseMatrix(size, size, normal);
    }
}
