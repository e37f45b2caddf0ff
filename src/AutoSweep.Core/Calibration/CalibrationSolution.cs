using MathNet.Numerics.LinearAlgebra;

namespace AutoSweep.Core.Calibration;

/// <summary>What a calibration's readings say of a fixture.</summary>
/// <param name="Stray">The open fixture.</param>
/// <param name="Relays">What each relay adds, relay 1 first.</param>
/// <param name="Covariance">Of stray and relays, noise and meter together, in square picofarads; row and column 0 are the stray's.</param>
/// <param name="Noise">The scatter of the readings.</param>
/// <param name="AdditivityProbability">How probable it is that sound relays scatter about the sums as much as these did.</param>
/// <param name="Findings">What is wrong; empty for a sound fixture.</param>
public sealed record CalibrationSolution(
    CalibratedValue Stray,
    IReadOnlyList<CalibratedValue> Relays,
    Matrix<double> Covariance,
    ReadingNoise Noise,
    double AdditivityProbability,
    IReadOnlyList<RelayFinding> Findings)
{
    /// <summary>Whether the fixture can be used with these values.</summary>
    public bool IsSound => Findings.Count == 0;

    /// <summary>What a set of relays makes, with its uncertainty.</summary>
    /// <param name="closed">The relays; bit 0 is relay 1.</param>
    public (double Picofarads, double StandardUncertainty) Total(uint closed)
    {
        var members = Vector<double>.Build.Dense(Relays.Count + 1, index => index == 0 || ((closed >> (index - 1)) & 1) != 0 ? 1 : 0);
        var values = Vector<double>.Build.DenseOfEnumerable([Stray.Picofarads, .. Relays.Select(relay => relay.Picofarads)]);
        return (members.DotProduct(values), Math.Sqrt(members.DotProduct(Covariance * members)));
    }
}
