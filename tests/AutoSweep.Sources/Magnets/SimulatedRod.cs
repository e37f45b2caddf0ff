using AutoSweep.Core.Magnets;

namespace AutoSweep.Sources.Magnets;

/// <summary>A magnet rod before a turning wheel, a hand that moves it, and a meter that reads its level; the truth is known.</summary>
/// <param name="Truth">What the rod is.</param>
/// <param name="Hand">What moves it.</param>
/// <param name="Seed">Of hand, lock and noise.</param>
public sealed class SimulatedRod(RodTruth Truth, RodHand Hand, int Seed)
{
    private const double DecibelsOfShare = 8.685889638; // 20·log10(e)

    private readonly Random _random = new(Seed);
    private double _outward;
    private MoveDirection? _last;

    /// <summary>Whether tip and wheel have met.</summary>
    public bool Touched { get; private set; }

    /// <summary>How many moves were made.</summary>
    public int Moves { get; private set; }

    /// <summary>The level over its target in decibels, without noise.</summary>
    public double Decibels => Truth.StartDecibels - (Truth.DecibelsPerMillimetre * _outward);

    /// <summary>The gap now at the wheel's highest tooth, in millimetres.</summary>
    public double ClosestGap => Truth.GapMillimetres - Truth.RunOutMillimetres + _outward;

    /// <summary>Loosens, moves, locks.</summary>
    public void Move(MagnetMove move)
    {
        Moves++;
        if (move.Direction == MoveDirection.Out)
        {
            Leg(MoveDirection.Out, move.Millimetres + move.OvershootMillimetres);
            if (move.OvershootMillimetres > 0)
                Leg(MoveDirection.In, move.OvershootMillimetres);
        }
        else
        {
            Leg(MoveDirection.In, move.Millimetres);
        }

        Shift(Truth.LockingMillimetres + (Hand.LockingSd * Gaussian()));
    }

    /// <summary>Reads as a bench does: samples over a second, in each of which some of the wobble is left.</summary>
    public MagnetReading Read(MagnetMove? after = null)
    {
        var samples = Enumerable.Range(0, Hand.Samples)
            .Select(_ => 1 + (Truth.WobbleShare * Hand.WobbleLeft * Math.Sin(2 * Math.PI * _random.NextDouble())) + (Hand.MeterNoise * Gaussian()))
            .ToArray();
        var mean = samples.Average();
        var sd = Math.Sqrt(samples.Sum(one => Math.Pow(one - mean, 2)) / (samples.Length - 1) / samples.Length);
        return new(Decibels + (DecibelsOfShare * Math.Log(mean)), DecibelsOfShare * Math.Max(sd, 0.0005), after);
    }

    private void Leg(MoveDirection direction, double millimetres)
    {
        var made = Math.Max(millimetres, Hand.SmallestMillimetres) * Math.Max(0, 1 + (Hand.Share * Gaussian()));
        if (_last is not null && direction != _last)
            made = Math.Max(0, made - Truth.BacklashMillimetres);
        _last = direction;
        Shift(direction == MoveDirection.Out ? made : -made);
    }

    private void Shift(double outward)
    {
        _outward += Truth.IsStuck ? 0 : outward;
        Touched |= ClosestGap <= 0;
    }

    // Box and Muller's transform.
    private double Gaussian() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
