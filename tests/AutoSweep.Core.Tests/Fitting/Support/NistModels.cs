using System.Numerics;

namespace AutoSweep.Core.Tests.Fitting.Support;

/// <summary>The models of NIST's sets, as their files print them.</summary>
internal static class NistModels
{
    internal static IReadOnlyDictionary<string, Func<Complex[], double, Complex>> ByName { get; } = new Dictionary<string, Func<Complex[], double, Complex>>
    {
        ["Misra1a"] = Saturating,
        ["BoxBOD"] = Saturating,
        ["Lanczos1"] = ThreeExponentials,
        ["Lanczos3"] = ThreeExponentials,
        ["Thurber"] = CubicOverCubic,
        ["Hahn1"] = CubicOverCubic,
        ["Kirby2"] = (b, x) => (b[0] + b[1] * x + b[2] * x * x) / (1 + b[3] * x + b[4] * x * x),
        ["Gauss1"] = (b, x) => b[0] * Complex.Exp(-b[1] * x) + Bell(b[2], b[3], b[4], x) + Bell(b[5], b[6], b[7], x),
        ["Eckerle4"] = (b, x) => b[0] / b[1] * Complex.Exp(-0.5 * ((x - b[2]) / b[1]) * ((x - b[2]) / b[1])),
        ["MGH09"] = (b, x) => b[0] * (x * x + x * b[1]) / (x * x + x * b[2] + b[3]),
        ["MGH10"] = (b, x) => b[0] * Complex.Exp(b[1] / (x + b[2])),
        ["MGH17"] = (b, x) => b[0] + b[1] * Complex.Exp(-x * b[3]) + b[2] * Complex.Exp(-x * b[4]),
        ["Rat42"] = (b, x) => b[0] / (1 + Complex.Exp(b[1] - b[2] * x)),
        ["Rat43"] = (b, x) => b[0] / Power(1 + Complex.Exp(b[1] - b[2] * x), 1 / b[3]),
        ["DanWood"] = (b, x) => b[0] * Power(x, b[1]),
        ["Chwirut2"] = (b, x) => Complex.Exp(-b[0] * x) / (b[1] + b[2] * x),
        ["Bennett5"] = (b, x) => b[0] * Power(b[1] + x, -1 / b[2]),
        ["Roszman1"] = (b, x) => b[0] - b[1] * x - Arctangent(b[2] / (x - b[3])) / Math.PI,
    };

    private static Complex Saturating(Complex[] b, double x) => b[0] * (1 - Complex.Exp(-b[1] * x));

    private static Complex ThreeExponentials(Complex[] b, double x) =>
        b[0] * Complex.Exp(-b[1] * x) + b[2] * Complex.Exp(-b[3] * x) + b[4] * Complex.Exp(-b[5] * x);

    private static Complex CubicOverCubic(Complex[] b, double x) =>
        (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6])));

    private static Complex Bell(Complex height, Complex centre, Complex width, double x) =>
        height * Complex.Exp(-(x - centre) * (x - centre) / (width * width));

    // exp(w·ln z): Complex.Pow rounds the tiny imaginary part that carries the derivative.
    private static Complex Power(Complex z, Complex w) => Complex.Exp(w * new Complex(Math.Log(z.Real), z.Imaginary / z.Real));

    // Complex.Atan loses it too; to first order arctan(a + ih) = arctan a + ih/(1 + a²).
    private static Complex Arctangent(Complex z) => new(Math.Atan(z.Real), z.Imaginary / (1 + z.Real * z.Real));
}
