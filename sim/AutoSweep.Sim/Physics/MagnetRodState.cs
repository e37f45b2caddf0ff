using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Physics;

/// <summary>Where a magnet rod stands, and what that does to its output's level.</summary>
internal sealed class MagnetRodState(RodDefinition rod)
{
    private double outward;
    private bool? lastOut;

    /// <summary>Whether tip and wheel have met: the wheel's teeth are chipped, its tone is gone for good.</summary>
    public bool Touched { get; private set; }

    /// <summary>The emf over the emf as found.</summary>
    public double Gain => Touched ? 0 : Math.Pow(10, -rod.DecibelsPerMillimetre * outward / 20);

    /// <summary>Pushes or pulls it while its set screw is loose.</summary>
    /// <param name="millimetres">Outward; below 0 is towards the wheel.</param>
    public void Push(double millimetres)
    {
        var isOut = millimetres > 0;
        var made = Math.Abs(millimetres) - (lastOut is { } last && last != isOut ? rod.BacklashMillimetres : 0);
        lastOut = isOut;
        Shift(Math.Max(0, made) * (isOut ? 1 : -1));
    }

    /// <summary>Locks its set screw, which shifts it.</summary>
    /// <param name="further">By how much more or less than usual.</param>
    public void Lock(double further) => Shift(rod.LockingMillimetres + further);

    private void Shift(double millimetres)
    {
        outward += millimetres;
        Touched |= rod.GapMillimetres + outward <= 0;
    }
}
