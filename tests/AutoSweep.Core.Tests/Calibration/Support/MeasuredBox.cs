using System.Numerics;
using AutoSweep.Core.Calibration;
using MathNet.Numerics.Distributions;

namespace AutoSweep.Core.Tests.Calibration.Support;

/// <summary>A relay box of the usual make with drawn true values, measured by a drawn meter: admittances of a parallel circuit.</summary>
public sealed class MeasuredBox
{
    public const double GainLimit = 0.0005;
    private const double NoiseShare = 0.0005;
    private const double DissipationNoise = 2e-4;
    private const double LossTangent = 0.0005;
    private const double Omega = 2 * Math.PI * 1000;

    private readonly Random _random;
    private readonly double _gain;
    private readonly BoxFault _fault;
    private readonly double _leakTangent;

    public MeasuredBox(int seed, BoxFault fault = BoxFault.None, bool meterIsExact = false)
    {
        _random = new(seed);
        Stray = 20 + (380 * _random.NextDouble());
        Relays = [.. CalibrationSolverOptions.UsualBox(16)!.Select(nominal => nominal * (1 + (0.03 * Either())))];
        _gain = meterIsExact ? 1 : 1 + (GainLimit * Either());
        (_fault, FaultyRelay) = (fault, _random.Next(16));
        _leakTangent = 0.02 + (0.08 * _random.NextDouble());
    }

    public double Stray { get; }

    public double[] Relays { get; }

    /// <summary>The relay with the fault, from 0.</summary>
    public int FaultyRelay { get; }

    /// <summary>How often it failed to close where the noise of three readings lets it be seen.</summary>
    public int VisibleFailures { get; private set; }

    public CalibrationSolution Calibrate(CalibrationPlanOptions? options = null)
    {
        var plan = options ?? new();
        var readings = CalibrationPlan.Sets(16, plan).SelectMany(set => ReadSet(set, plan.Repeats)).ToArray();
        return CalibrationSolver.Solve(readings, 16, new(GainLimit, 0), new() { NominalPicofarads = CalibrationSolverOptions.UsualBox(16) });
    }

    public IEnumerable<CalibrationReading> ReadSet(uint set, int repeats)
    {
        var admittance = Admittance(set);
        for (var reading = 0; reading < repeats; reading++)
        {
            var (farads, loss) = (admittance.Imaginary / Omega, admittance.Real / admittance.Imaginary);
            yield return new(set, farads * _gain * (1 + (NoiseShare * Gauss())), loss + (DissipationNoise * Gauss()));
        }
    }

    private Complex Admittance(uint set)
    {
        var failsNow = _fault == BoxFault.Intermittent && _random.Next(5) == 0;
        var sum = new Complex(0, Omega * Stray);
        foreach (var (relay, picofarads) in Relays.Index())
            sum += Admittance(relay, picofarads, set, failsNow);
        if (failsNow && ((set >> FaultyRelay) & 1) != 0 && Relays[FaultyRelay] > 10 * NoiseShare * sum.Imaginary / Omega / Math.Sqrt(3))
            VisibleFailures++;
        return sum;
    }

    private Complex Admittance(int relay, double picofarads, uint set, bool failsNow)
    {
        var faulty = relay == FaultyRelay;
        var told = ((set >> relay) & 1) != 0;
        var closed = (faulty, _fault) switch
        {
            (true, BoxFault.StuckOpen) => false,
            (true, BoxFault.StuckClosed) => true,
            (true, _) when failsNow => false,
            _ => told,
        };
        var own = new Complex(LossTangent, 1) * Omega * picofarads;
        if (faulty && _fault == BoxFault.OffWhenCombined && BitOperations.PopCount(set) > 1)
            own *= 1.02;
        if (faulty && _fault == BoxFault.Leaking)
            own += _leakTangent * Omega * picofarads;
        var contact = faulty && _fault == BoxFault.LeakingWhileOpen ? _leakTangent * Omega * picofarads : 0;
        return closed ? own : contact == 0 ? 0 : own * contact / (own + contact);
    }

    private double Either() => (2 * _random.NextDouble()) - 1;

    private double Gauss() => Normal.Sample(_random, 0, 1);
}
